import { describe, expect, it } from 'vitest';
import { readHere } from '../../../taskpane/actions/readInventory.ts';
import { writeStoreList } from '../../../taskpane/actions/store.ts';
import type { Home } from '../../../taskpane/session.ts';
import { paneSession } from '../paneSession.ts';

async function written(home: Home) {
  const made = paneSession();
  await readHere(made.session);
  made.session.home.value = home;
  await writeStoreList(made.session);
  return made;
}

describe('the list for the store', () => {
  it('goes into a workbook of its own where that was said, and nothing into the one that is open', async () => {
    const { done } = await written('own');
    expect(done.workbooks).toHaveLength(1);
    expect(done.workbooks[0]!.fileName).toMatch(/^inventory .*\.xlsx$/);
    expect(done.workbooks[0]!.sheets.map(({ name }) => name)).toContain('Store list');
    expect([done.added, done.replaced, done.appended]).toEqual([[], [], []]);
  });

  it('goes into the open workbook where that was said, and tells the file it is made from', async () => {
    const { done } = await written('here');
    expect(done.workbooks).toEqual([]);
    expect(done.added.flat().map(({ name }) => name)).toContain('Store list');
    expect(JSON.stringify(done.added)).toContain('inventory.xlsx');
  });
});
