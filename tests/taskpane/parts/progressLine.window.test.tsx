import { render } from 'preact';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { answer } from '../../../src/basics/outcome.ts';
import { underway } from '../../../taskpane/actions/underway.ts';
import { ProgressLine } from '../../../taskpane/parts/progressLine.tsx';
import { paneSession } from '../paneSession.ts';

let place: HTMLElement;
beforeEach(() => {
  place = document.createElement('div');
  document.body.append(place);
});
afterEach(() => {
  render(null, place);
});

const rest = (time: number) => new Promise((resolve) => setTimeout(resolve, time));

it('work is shown once it takes half a second, with its share, and can be given up', async () => {
  const { session } = paneSession();
  render(<ProgressLine session={session} />, place);
  const work = underway(session, 'Planning', ({ signal, progress }) => {
    progress(0.25);
    return new Promise((_, reject) => signal.addEventListener('abort', () => reject(signal.reason)));
  });
  await rest(200);
  expect(place.textContent).toBe('');
  await vi.waitFor(() => expect(place.textContent).toContain('Planning'), 5_000);
  expect(place.querySelector('progress')!.value).toBe(0.25);
  place.querySelector('button')!.click();
  await work;
  await vi.waitFor(() => expect(place.textContent).toBe(''), 5_000);
  expect(session.notice.value?.text).toBe('Planning: given up; the workbook is as it was');
});

it('that work is given up is said while it is still taken back', async () => {
  const { session } = paneSession();
  render(<ProgressLine session={session} />, place);
  let takenBack: (reason: Error) => void = () => undefined;
  const work = underway(session, 'Filling columns', ({ signal, progress }) => {
    signal.addEventListener('abort', () => progress(0.5));
    return new Promise((_, reject) => (takenBack = reject));
  });
  await vi.waitFor(() => expect(place.textContent).toContain('Filling columns'), 5_000);
  place.querySelector('button')!.click();
  await vi.waitFor(() => expect(place.textContent).toContain('Giving up: what was written is taken back'));
  expect(session.notice.value).toBeUndefined();
  takenBack(new Error('given up'));
  await work;
  expect(session.notice.value?.text).toBe('Filling columns: given up; the workbook is as it was');
});

it('work whose place was taken has nothing to say', async () => {
  const { session } = paneSession();
  const first = underway(session, 'Planning', ({ signal }) => {
    return new Promise((_, reject) => signal.addEventListener('abort', () => reject(signal.reason)));
  });
  await underway(session, 'Counting anew', async () => answer(1));
  await first;
  expect(session.notice.value).toBeUndefined();
  expect(session.underway.value).toBeUndefined();
});
