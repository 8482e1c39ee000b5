import { describe, expect, it } from 'vitest';
import type { Question, RequestOf } from '../../../taskpane/computing/answers.ts';
import { answerTo } from '../../../taskpane/computing/computing.ts';
import type { Memory } from '../../../taskpane/computing/memory.ts';
import type { WorkerLike } from '../../../taskpane/computing/workerComputing.ts';
import { workerComputing } from '../../../taskpane/computing/workerComputing.ts';
import { sendInBlocks, takeBlocks } from '../../../taskpane/computing/wire.ts';
import { dayFrom } from '../../../src/basics/calendar.ts';
import { DEFAULT_SETTINGS } from '../../../src/inventory/settings.ts';

const asOf = (() => {
  const day = dayFrom('2026-06-30', 'as-of');
  if (!day.ok) throw new Error('no day');
  return day.value;
})();

const HEADS = ['Serial', 'Type', 'Site', 'Installed', 'Removed', 'Cause'];

/** So many batteries, each with its own serial, installed in one of 40 months. */
const rows = (count: number) => [
  HEADS,
  ...Array.from({ length: count }, (_, index) => [
    `NF${100_000 + index}`,
    '6T AGM',
    index % 2 === 0 ? 'Kaldmoor' : 'Isvarg Pass',
    asOf - 30 * (1 + (index % 40)),
    index % 9 === 0 ? asOf - 3 : null,
    index % 9 === 0 ? 'failed' : null,
  ]),
];

const request = (count: number): RequestOf<'read'> => ({
  sheet: {
    name: 'Batteries',
    rows: rows(count),
    firstRow: 1,
    firstColumn: 1,
    dateCells: new Map([
      [3, new Set(Array.from({ length: count }, (_, index) => index + 1))],
      [4, new Set(Array.from({ length: count }, (_, index) => index + 1))],
    ]),
    hiddenRows: new Set(),
    from1904: false,
    fromText: false,
  },
  asOf,
  settings: DEFAULT_SETTINGS,
});

/** A worker on this thread: every message is copied as between threads, and the largest list is noted. */
function copyingWorkers() {
  const seen = { started: 0, stopped: 0, longest: 0 };
  const start = (): WorkerLike => {
    seen.started += 1;
    let alive = true;
    const memory: Memory = {};
    const toPane: ((event: { data: unknown }) => void)[] = [];
    const toWorker: ((piece: never) => void)[] = [];
    const copy = (message: unknown): unknown => {
      const { rows: block } = message as { rows?: unknown[] };
      seen.longest = Math.max(seen.longest, block?.length ?? 0);
      return structuredClone(message);
    };
    takeBlocks(
      (hear) => toWorker.push(hear),
      async (message) => {
        const { question, request: asked } = message as { question: Question; request: never };
        await sendInBlocks(
          (piece) => {
            const data = copy(piece);
            setTimeout(() => alive && toPane.forEach((listener) => listener({ data })));
          },
          { answer: answerTo(memory, question, asked) },
        );
      },
    );
    return {
      postMessage: (message) => {
        const data = copy(message);
        setTimeout(() => alive && toWorker.forEach((hear) => hear(data as never)));
      },
      addEventListener: (type, listener) => {
        if (type === 'message') toPane.push(listener as (event: { data: unknown }) => void);
      },
      terminate: () => {
        alive = false;
        seen.stopped += 1;
      },
    };
  };
  return { start, seen };
}

describe('computing in a worker', () => {
  it('answers as computing on the spot does, rows crossing in blocks of at most 2,000', async () => {
    const { start, seen } = copyingWorkers();
    const computing = workerComputing(start);
    const asked = request(5_000);
    const reading = await computing.ask('read', asked);
    const plan = await computing.ask('plan', undefined);
    const memory: Memory = {};
    expect(reading).toEqual(answerTo(memory, 'read', asked));
    expect(plan).toEqual(answerTo(memory, 'plan', undefined));
    expect(seen).toEqual({ started: 1, stopped: 0, longest: 2_000 });
  });

  it('forgets nothing when work is given up: the next question has its inventory', async () => {
    const { start, seen } = copyingWorkers();
    const computing = workerComputing(start);
    await computing.ask('read', request(300));
    const control = new AbortController();
    const given = computing.ask('plan', undefined, control.signal);
    setTimeout(() => control.abort(), 0);
    await expect(given).rejects.toThrow(/abort/i);
    const plan = await computing.ask('plan', undefined);
    expect(plan.ok && plan.value.inService).toBe(300 - Math.ceil(300 / 9));
    expect(seen).toMatchObject({ started: 2, stopped: 1 });
  });

  it('answers questions one after the other, in the order in which they were asked', async () => {
    const computing = workerComputing(copyingWorkers().start);
    const all = [300, 200].map((count) => computing.ask('read', request(count)));
    const plan = computing.ask('plan', undefined);
    const counts = (await Promise.all(all)).map((reading) => reading.ok && reading.value.batteryCount);
    expect(counts).toEqual([300, 200]);
    const made = await plan;
    expect(made.ok && made.value.inService).toBe(200 - Math.ceil(200 / 9));
  });
});
