import { writeXlsx } from 'hucre/xlsx';
import { expect, it } from 'vitest';
import type { WorkerLike } from '../../../taskpane/computing/workerComputing.ts';
import { sendInBlocks, takeBlocks } from '../../../taskpane/computing/wire.ts';
import { directFileWork } from '../../../taskpane/host/workbook/fileWork.ts';
import type { FileQuestion } from '../../../taskpane/page/fileMessages.ts';
import { answerFor, handedOver, packed } from '../../../taskpane/page/fileMessages.ts';
import { workerFileWork } from '../../../taskpane/page/workerFileWork.ts';

const ROWS = 5000;
const COLUMNS = 12;

const inventory = (): Promise<Uint8Array> =>
  writeXlsx({
    sheets: [
      {
        name: 'Batteries',
        rows: Array.from({ length: ROWS }, (_, row) =>
          Array.from({ length: COLUMNS }, (_each, column) => (column === 3 ? null : `NF${row}-${column}`)),
        ),
        cells: new Map([['7,4', { value: 46_000, style: { numFmt: 'yyyy-mm-dd' } }]]),
        rowDefs: new Map([[9, { hidden: true }]]),
      },
      { name: 'Notes', rows: [['kept dry']] },
    ],
  });

/** Workers on this thread: messages are copied or moved as between threads, and the largest number of cells is noted. */
function copyingWorkers() {
  const seen = { alive: 0, mostCells: 0 };
  const start = (): WorkerLike => {
    seen.alive += 1;
    let alive = true;
    const toPage: ((event: { data: unknown }) => void)[] = [];
    const toWorker: ((piece: never) => void)[] = [];
    const post = (piece: unknown, transfer: Transferable[]): void => {
      seen.mostCells = Math.max(seen.mostCells, cellsOf(piece as { rows?: unknown[] }));
      const data: unknown = structuredClone(piece, { transfer });
      setTimeout(() => alive && toPage.forEach((listener) => listener({ data })));
    };
    takeBlocks(
      (hear) => toWorker.push(hear),
      async (message) => {
        const answer = packed(await answerFor(message as FileQuestion));
        await sendInBlocks(post, { answer }, handedOver(answer));
      },
    );
    return {
      postMessage: (message) => toWorker.forEach((hear) => hear(structuredClone(message) as never)),
      addEventListener: (type, listener) =>
        type === 'message' && toPage.push(listener as unknown as (event: { data: unknown }) => void),
      terminate: () => {
        alive = false;
        seen.alive -= 1;
      },
    };
  };
  return { seen, start };
}

const cellsOf = ({ rows = [] }: { rows?: unknown[] }): number =>
  rows.reduce((sum: number, row) => sum + Object.keys((row as [string, object])[1]).length, 0);

it('reads a file as reading it on the spot does, in pieces that hold nobody up', async () => {
  const { seen, start } = copyingWorkers();
  const bytes = await inventory();
  const here = await directFileWork.read(bytes, 'store.xlsx', 'book1');
  const there = await workerFileWork(start).read(bytes, 'store.xlsx', 'book1');
  expect(there).toEqual(here);
  expect(seen.mostCells).toBeLessThanOrEqual(20_000 + COLUMNS);
  expect(seen.mostCells).toBeGreaterThan(COLUMNS);
  expect(seen.alive).toBe(0);
});

it('leaves the bytes that were opened where they are, for the file is saved from them', async () => {
  const bytes = await inventory();
  const length = bytes.length;
  await workerFileWork(copyingWorkers().start).read(bytes, 'store.xlsx', 'book1');
  expect(bytes).toHaveLength(length);
});

it('hands on why a file can’t be read', async () => {
  const refused = await workerFileWork(copyingWorkers().start).read(new Uint8Array(9), 'a.ods', 'book1');
  expect(refused).toMatchObject({ ok: false, problem: { because: 'oldFileKind' } });
});

it('makes the same file as making it on the spot', async () => {
  const bytes = await inventory();
  const cells = Array.from({ length: ROWS }, (_, row) => ({ row, column: 3, value: row / 4 }));
  const now = { sheets: [{ name: 'Batteries', original: 'Batteries', cells }] };
  const { start } = copyingWorkers();
  const saved = await workerFileWork(start).save(bytes, now, 'formulas');
  const here = await directFileWork.save(bytes, now, 'formulas');
  expect(saved.lost).toEqual(here.lost);
  const [one, other] = await Promise.all(
    [saved, here].map((file) => directFileWork.read(file.bytes, 'a.xlsx', 'book1')),
  );
  expect(one).toEqual(other);
});

it('stops at once when it is given up, and keeps no worker', async () => {
  const { seen, start } = copyingWorkers();
  const control = new AbortController();
  const reading = workerFileWork(start).read(await inventory(), 'store.xlsx', 'book1', control.signal);
  control.abort(new DOMException('given up', 'AbortError'));
  await expect(reading).rejects.toThrow('given up');
  expect(seen.alive).toBe(0);
});
