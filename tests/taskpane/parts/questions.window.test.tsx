import { render } from 'preact';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { ask } from '../../../taskpane/actions/ask.ts';
import { fillColumns } from '../../../taskpane/actions/fillColumns.ts';
import { readHere } from '../../../taskpane/actions/readInventory.ts';
import { HomeQuestion } from '../../../taskpane/parts/homeQuestion.tsx';
import { QuestionBox } from '../../../taskpane/parts/questionBox.tsx';
import { HOME_WORDS } from '../../../taskpane/text/paneText.ts';
import { paneSession } from '../paneSession.ts';

let place: HTMLElement;
beforeEach(() => {
  place = document.createElement('div');
  document.body.append(place);
});
afterEach(() => {
  render(null, place);
});

const button = (words: string): HTMLElement | undefined =>
  [...place.querySelectorAll('button')].find(({ textContent }) => textContent === words);
const secondClick = (): MouseEvent => new MouseEvent('click', { bubbles: true, detail: 2 });

it('where to write is still asked after a double click on what asks for it', async () => {
  const { session } = paneSession();
  await readHere(session);
  render(<HomeQuestion session={session} />, place);
  const choice = { keys: ['monthsInService'], as: 'values', place: 'beside', problems: 'why' } as const;
  const first = fillColumns(session, choice);
  const second = fillColumns(session, choice);
  await first;
  await vi.waitFor(() => expect(button(HOME_WORDS.here)).toBeDefined());
  button(HOME_WORDS.here)!.click();
  await second;
  expect(session.notice.value?.text).toMatch(/^Filled: Months in service/);
});

it('where to write is no longer asked once another workbook is open', async () => {
  const { session } = paneSession();
  await readHere(session);
  const { fileName: _, ...other } = session.workbook.value!;
  const choice = { keys: ['monthsInService'], as: 'values', place: 'beside', problems: 'why' } as const;
  const asked = fillColumns(session, choice);
  session.workbook.value = { ...other, fileName: 'the one before.xlsx' };
  await readHere(session);
  await asked;
  expect(session.homeAsked.value).toBeUndefined();
  expect(session.notice.value).toBeUndefined();
});

it('a question that takes the place of another stays, and is not answered by the end of a double click', async () => {
  const { session } = paneSession();
  render(<QuestionBox session={session} />, place);
  const first = ask(session, 'Write over A?', ['No', 'Yes']);
  const second = ask(session, 'Write over B?', ['No', 'Yes']);
  expect(await first).toBe(0);
  await vi.waitFor(() => expect(place.textContent).toContain('Write over B?'));
  button('No')!.dispatchEvent(secondClick());
  button('Yes')!.click();
  expect(await second).toBe(1);
});
