/** The most rows that are handed to the grid in one call. */
const BLOCK_ROWS = 2000;

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
  for (let from = 0; from < rows; from += BLOCK_ROWS) {
    work?.signal?.throwIfAborted();
    const to = Math.min(rows, from + BLOCK_ROWS);
    doBlock(from, to);
    work?.progress?.(to / rows);
    if (to < rows) await turn();
  }
}
