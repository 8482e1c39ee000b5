import { expect, it } from 'vitest';
import { newPageState } from '../../../taskpane/page/pageState.ts';
import { duringWork } from '../../../taskpane/page/pageWork.ts';

/** Waits until something is given up. */
const untilGivenUp = ({ signal }: { readonly signal: AbortSignal }): Promise<void> =>
  new Promise((_, reject) => signal.addEventListener('abort', () => reject(signal.reason as Error)));

it('tells how far the work is, and nothing once it is done', async () => {
  const page = newPageState();
  await duringWork(page, 'Saving', async ({ progress }) => {
    progress(0.25);
    expect(page.underway.value).toMatchObject({ what: 'Saving', share: 0.25 });
  });
  expect(page.underway.value).toBeUndefined();
});

it('can be given up, and says that nothing has changed', async () => {
  const page = newPageState();
  const working = duringWork(page, 'Opening fleet.xlsx', untilGivenUp);
  page.underway.value!.giveUp();
  await working;
  expect(page.message.value).toEqual({
    kind: 'done',
    text: 'Opening fleet.xlsx: given up; the workbook is as it was',
  });
});

it('does one piece of work at a time, for both would write over the same workbook', async () => {
  const page = newPageState();
  const first = duringWork(page, 'Opening fleet.xlsx', untilGivenUp);
  let began = false;
  await duringWork(page, 'Saving', async () => void (began = true));
  expect(began).toBe(false);
  expect(page.message.value).toMatchObject({ kind: 'problem' });
  page.underway.value!.giveUp();
  await first;
});

it('says what failed in the program itself', async () => {
  const page = newPageState();
  await duringWork(page, 'Saving', () => Promise.reject(new Error('no room left')));
  expect(page.message.value).toMatchObject({
    kind: 'problem',
    text: expect.stringContaining('no room left'),
  });
});
