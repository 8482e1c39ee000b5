import { expect, it } from 'vitest';
import { PAGES } from '../../../docs/generate/makePages.ts';
import { page } from '../../../docs/generate/page.ts';
import { VIEWS } from '../../../taskpane/session.ts';
import { HELP_PAGE, VIEW_HELP } from '../../../taskpane/text/paneText.ts';
import { textOf } from '../../house/sourceFiles.ts';

it.each(VIEWS)('the help of %s leads to a heading that is there', (view) => {
  const [source] = Object.entries(PAGES).find(([, name]) => `docs/${name}` === HELP_PAGE)!;
  expect(page(textOf(source))).toContain(`<h2 id="${VIEW_HELP[view].section}">`);
});
