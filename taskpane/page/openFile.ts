import type { Day } from '../../src/basics/calendar.ts';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { problemText } from '../../src/basics/problemText.ts';
import type { GivenSettings } from '../../src/inventory/settings.ts';
import type { PageState } from './pageState.ts';
import { PAGE } from './pageText.ts';
import { duringWork, tellProblem } from './pageWork.ts';

/** The demonstration inventory and its settings, which the build puts beside the page, and the day for which it was written. */
const DEMO = 'norrfell-inventory.xlsx';
const DEMO_SETTINGS = 'norrfell-settings.json';
const DEMO_DAY = dayFromParts(2026, 6, 30)!;

/** A file as the user gave it. */
export type GivenFile = {
  readonly name: string;
  readonly bytes: () => Promise<Uint8Array>;
  /** The day for which it was made, where that is known, and what a reader should know about it. */
  readonly asOf?: Day;
  readonly note?: string;
  /** Settings that come with it, in place of what the user has said. */
  readonly settings?: () => Promise<GivenSettings>;
};

/** A file that a browser hands over. */
export const givenFile = (file: File): GivenFile => ({
  name: file.name,
  bytes: async () => new Uint8Array(await file.arrayBuffer()),
});

/** Opens a file in place of what is open; asks first where something would be lost. */
export function openFile(page: PageState, file: GivenFile): void {
  const goOn = (): void => void openNow(page, file);
  if (page.changed.value) page.question.value = { kind: 'discard', goOn };
  else goOn();
}

/** Opens the demonstration inventory. */
export function openDemo(page: PageState): void {
  const bytes = async (): Promise<Uint8Array> => new Uint8Array(await (await beside(DEMO)).arrayBuffer());
  const settings = async (): Promise<GivenSettings> =>
    (await (await beside(DEMO_SETTINGS)).json()) as GivenSettings;
  openFile(page, { name: DEMO, bytes, asOf: DEMO_DAY, note: PAGE.demoNote, settings });
}

/** A file of the demonstration. */
async function beside(name: string): Promise<Response> {
  const response = await fetch(`demo/${name}`);
  if (!response.ok) throw new Error(`demo/${name} is not there`);
  return response;
}

async function openNow(page: PageState, file: GivenFile): Promise<void> {
  const workbook = page.workbook.value;
  if (workbook === undefined) return tellProblem(page, PAGE.stillStarting);
  let isOpen = false;
  await duringWork(page, `${PAGE.opening} ${file.name}`, async (work) => {
    const opened = await workbook.host.open(await file.bytes(), file.name, work);
    if (!opened.ok) return tellProblem(page, problemText(opened.problem));
    isOpen = true;
    workbook.lookAgain();
    page.fileName.value = file.name;
    page.changed.value = false;
    const more = [...(file.note === undefined ? [] : [file.note]), ...opened.value.warnings];
    page.message.value = { kind: 'done', text: `${PAGE.opened} ${file.name}.`, more };
  });
  if (isOpen) await page.afterOpening.value?.(file.asOf, await file.settings?.());
}
