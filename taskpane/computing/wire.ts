/**
 * Messages between the pane and its worker. A copy of many rows would hold the screen up while it is made, so long
 * lists of rows cross in blocks, with a turn of the event loop between.
 */
type Piece =
  | { readonly kind: 'rows'; readonly place: number; readonly rows: readonly unknown[] }
  | { readonly kind: 'whole'; readonly message: unknown };

/** Where rows are missing from a message until their blocks have come. */
type Gap = { readonly gap: number; readonly length: number };

/** A list that is longer goes ahead of its message. */
const LONG = 200;
/** The most rows in one block, and about as many cells. */
const BLOCK = 2000;
const BLOCK_CELLS = 20_000;

const cellsIn = (row: unknown): number => {
  if (Array.isArray(row)) return row.length === 2 ? 2 + cellsIn(row[1]) : row.length;
  return isPlainObject(row) ? Object.keys(row).length : 1;
};

const isGap = (value: unknown): value is Gap => typeof value === 'object' && value !== null && 'gap' in value;

const isPlainObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;

/** Sends a message whose long lists go ahead of it in blocks; what is in `handedOver` moves without a copy. */
export async function sendInBlocks(
  post: (piece: Piece, handedOver: Transferable[]) => void,
  message: unknown,
  handedOver: readonly Transferable[] = [],
): Promise<void> {
  const lists: (readonly unknown[])[] = [];
  const whole = withoutLists(message, lists);
  for (const [place, rows] of lists.entries()) {
    for (let from = 0; from < rows.length;) {
      const to = endOfBlock(rows, from);
      post({ kind: 'rows', place, rows: rows.slice(from, to) }, []);
      from = to;
      await turn();
    }
  }
  post({ kind: 'whole', message: whole }, [...handedOver]);
}

function endOfBlock(rows: readonly unknown[], from: number): number {
  let [to, cells] = [from, 0];
  while (to < rows.length && to - from < BLOCK && cells < BLOCK_CELLS) {
    cells += cellsIn(rows[to]);
    to += 1;
  }
  return to;
}

function withoutLists(value: unknown, lists: (readonly unknown[])[]): unknown {
  if (Array.isArray(value)) {
    if (value.length <= LONG) return value.map((each) => withoutLists(each, lists));
    lists.push(value);
    return { gap: lists.length - 1, length: value.length } satisfies Gap;
  }
  if (!isPlainObject(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, withoutLists(each, lists)]));
}

/** Puts messages together again and hands them on. */
export function takeBlocks(
  listen: (hear: (piece: Piece) => void) => void,
  take: (message: unknown) => void,
): void {
  let lists: unknown[][] = [];
  listen((piece) => {
    if (piece.kind === 'rows') {
      const list = (lists[piece.place] ??= []);
      for (const row of piece.rows) list.push(row);
      return;
    }
    const whole = withLists(piece.message, lists);
    lists = [];
    take(whole);
  });
}

function withLists(value: unknown, lists: readonly unknown[][]): unknown {
  if (isGap(value)) return lists[value.gap];
  if (Array.isArray(value)) return value.map((each) => withLists(each, lists));
  if (!isPlainObject(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, withLists(each, lists)]));
}

/** Lets everything else that waits have its turn. */
export function turn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}
