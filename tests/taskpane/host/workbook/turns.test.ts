import { afterEach, describe, expect, it, vi } from 'vitest';
import { inBlocks } from '../../../../taskpane/host/workbook/turns.ts';

/** The sizes of the blocks in which rows are written by a grid that takes so long for each [ms]. */
async function sizes(rows: number, timePerRow: number, signal?: AbortSignal, seen: number[] = []) {
  let clock = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => clock);
  await inBlocks(rows, signal && { signal }, (from, to) => {
    clock += (to - from) * timePerRow;
    seen.push(to - from);
  });
  return seen;
}

afterEach(() => vi.restoreAllMocks());

describe('long work on the grid', () => {
  it('is cut into blocks of 2,000 rows where the grid is fast', async () => {
    expect(await sizes(9_000, 0.001)).toEqual([500, 2000, 2000, 2000, 2000, 500]);
  });

  it('is cut into as many rows as the grid takes in 50 ms where it is slow', async () => {
    expect((await sizes(2_000, 0.25)).slice(0, 4)).toEqual([500, 200, 200, 200]);
    expect((await sizes(1_000, 5)).slice(0, 4)).toEqual([500, 100, 100, 100]);
  });

  it('ends at the next block once it is given up', async () => {
    const control = new AbortController();
    const seen: number[] = [];
    setTimeout(() => control.abort(new Error('given up')), 0);
    await expect(sizes(100_000, 0.25, control.signal, seen)).rejects.toThrow('given up');
    expect(seen.length).toBeLessThanOrEqual(2);
  });
});
