import { excelIsDark, isInExcel, paneShown } from './host/excel/page.ts';
import { NOT_IN_EXCEL } from './text/paneText.ts';

/** Joins the pane to Excel once Excel shows it; until then the page only answers cell functions. */
async function start(): Promise<void> {
  const element = document.getElementById('pane')!;
  await paneShown();
  if (!isInExcel()) {
    element.textContent = NOT_IN_EXCEL;
    return;
  }
  const dark = excelIsDark();
  if (dark !== undefined) document.documentElement.dataset.theme = dark ? 'dark' : 'light';
  const [{ openPane }, { excelHost }] = await Promise.all([
    import(/* webpackChunkName: "pane" */ './openPane.ts'),
    import(/* webpackChunkName: "pane" */ './host/excel/excelHost.ts'),
  ]);
  openPane(element, excelHost());
}

void start();
