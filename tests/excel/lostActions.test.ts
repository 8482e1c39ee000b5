import { describe, expect, it } from 'vitest';
import type { WorkbookState } from './modelState.ts';
import { stateOf } from './modelState.ts';
import type { Action } from './paneWriting.ts';
import { ACTIONS, opened } from './paneWriting.ts';

type State = WorkbookState;
const isSame = (a: State, b: State): boolean => JSON.stringify(a) === JSON.stringify(b);

// Which sheet is shown may differ: going back there is asked for last, and losing that loses nothing.
const contents = ({ active: _, ...rest }: State): object => rest;

/** Whether there is nothing but what was there before, and what a sentence says is still there. */
function expectPart([at, now]: [string, State], before: State, after: State, still: string): void {
  const isTold = (name: string): boolean => still.includes(`“${name}”`);
  const told = after.sheets.filter(({ name }) => isTold(name));
  const kept = before.sheets.filter(({ name }) => !isTold(name));
  expect([at, [...now.sheets].sort(byName)]).toEqual([at, [...kept, ...told].sort(byName)]);
  expect([before.names, after.names]).toContainEqual(now.names);
  expect(now.events).toBe(true);
}

const byName = (a: { readonly name: string }, b: { readonly name: string }): number =>
  a.name < b.name ? -1 : 1;

/** What the workbook is before and after an action without faults, and in how many syncs. */
async function untroubled(action: Action): Promise<{ before: State; after: State; syncs: number }> {
  const { rig, session } = await opened(action);
  const before = stateOf(rig.workbook);
  await action.act(session);
  expect([session.notice.value?.kind, rig.traffic.notModelled]).not.toContain('problem');
  const after = stateOf(rig.workbook);
  expect(after).not.toEqual(before);
  return { before, after, syncs: rig.traffic.syncs };
}

describe.each(Object.entries(ACTIONS))('%s', (_, action) => {
  it.each([false, true])(
    'is done whole or not at all at whichever sync the connection is lost (done all the same: %s)',
    async (isDoneAllTheSame) => {
      const { before, after, syncs } = await untroubled(action);
      expect(syncs).toBeGreaterThan(1);
      let { rig, session } = await opened(action);
      let refusals = 0;
      for (let lostAt = 1; lostAt <= syncs; lostAt += 1) {
        rig.resetTraffic();
        session.notice.value = undefined;
        Object.assign(rig.faults, { lostAt, isDoneAllTheSame });
        await action.act(session);
        const { kind, text } = session.notice.value ?? { kind: 'done', text: '' };
        const at = `lost at ${lostAt} of ${syncs}: ${text}`;
        expect(rig.traffic.notModelled).toEqual([]);
        const now = stateOf(rig.workbook);
        if (kind === 'done') expect([at, contents(now)]).toEqual([at, contents(after)]);
        else {
          expect(text).toMatch(/connection to Excel was lost.*do it again/);
          const [, still] = text.split('still there: ');
          if (still === undefined) expect([at, contents(now)]).toEqual([at, contents(before)]);
          else expectPart([at, now], before, after, still);
        }
        if (!isSame(now, before)) ({ rig, session } = await opened(action));
        refusals += kind === 'done' ? 0 : 1;
      }
      expect(refusals).toBeGreaterThan(0);
    },
    60_000,
  );

  it('tells what may remain where the connection stays away', async () => {
    const { before, after, syncs } = await untroubled(action);
    for (let lostAt = 1; lostAt <= syncs; lostAt += 1) {
      const { rig, session } = await opened(action);
      Object.assign(rig.faults, { lostAt, lostFor: 1_000 });
      await action.act(session);
      const { kind, text } = session.notice.value ?? { kind: 'done', text: '' };
      rig.faults.lostAt = undefined;
      // What is asked next switches the events on again.
      await session.host.workbook();
      const now = stateOf(rig.workbook);
      const at = `lost from ${lostAt} of ${syncs} on: ${text}`;
      if (kind === 'done') expect([at, contents(now)]).toEqual([at, contents(after)]);
      else if (isSame(now, before)) expect(text).toMatch(/connection to Excel was lost|look at \S/);
      else expect([at, text]).toEqual([at, expect.stringMatching(/(look at|still there:) \S/)]);
      expect(now.events).toBe(true);
    }
  }, 60_000);
});
