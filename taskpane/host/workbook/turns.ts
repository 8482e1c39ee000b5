/** The most rows that are handed to the grid in one call, the least, and how many go first. */
const BLOCK_ROWS = 2000;
const LEAST_ROWS = 100;
const FIRST_ROWS = 500;
/** What one call should take [ms], so that a click is heard at once: the next has as many rows as fit. */
const BLOCK_TIME = 50;

/** Lets the page draw and hear its user. */
export function turn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

/** How long work can be followed and given up; both may be left out. */
export type Followed = { readonly signal?: AbortSignal; readonly progress?: (share: number) => void };

/** A part of some work: its share from 0 to 1 is told as a share of the whole. */
export function partOf(work: Followed | undefined, from: number, share: number): Followed {
  const { signal, progress } = work ?? {};
  return {
    ...(signal && { signal }),
    ...(progress && { progress: (part: number) => progress(from + part * share) }),
  };
}

/** Does something for each block of rows, with a turn of the event loop between; an aborted signal ends it. */
export async function inBlocks(
  rows: number,
  work: Followed | undefined,
  doBlock: (from: number, to: number) => void,
): Promise<void> {
  let [from, most] = [0, FIRST_ROWS];
  while (from < rows) {
    work?.signal?.throwIfAborted();
    const to = Math.min(rows, from + most);
    const began = performance.now();
    doBlock(from, to);
    most = rowsInTime(most, performance.now() - began);
    work?.progress?.(to / rows);
    if (to < rows) await turn();
    from = to;
  }
}

function rowsInTime(rows: number, took: number): number {
  const fitting = Math.round((rows * BLOCK_TIME) / Math.max(1, took));
  return Math.min(BLOCK_ROWS, Math.max(LEAST_ROWS, fitting));
}
