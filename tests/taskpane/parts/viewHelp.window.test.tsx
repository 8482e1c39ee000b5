import { render } from 'preact';
import { expect, it } from 'vitest';
import { ViewHelp } from '../../../taskpane/parts/viewHelp.tsx';
import { VIEWS } from '../../../taskpane/session.ts';
import { HELP_PAGE, VIEW_HELP } from '../../../taskpane/text/paneText.ts';

it.each(VIEWS)('%s says in two lines what it does and where its numbers come from', (view) => {
  const place = document.createElement('div');
  render(<ViewHelp of={view} />, place);
  const lines = [...place.querySelectorAll('p')].map((each) => each.textContent ?? '');
  expect(lines).toHaveLength(2);
  for (const line of lines) expect(line).toMatch(/^[A-Z].{40,180}$/);
  expect(lines[1]).toMatch(/come/);
  const link = place.querySelector('a')!;
  expect(link.getAttribute('href')).toBe(`${HELP_PAGE}#${VIEW_HELP[view].section}`);
  expect(link.textContent).toMatch(/^How /);
});
