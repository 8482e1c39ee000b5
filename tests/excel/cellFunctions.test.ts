import { build } from 'esbuild';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { functionWords } from '../../docs/generate/metadata.ts';
import type { Cell } from '../../functions/cell.ts';
import { isCellError } from '../../functions/cell.ts';
import described from '../../functions/functions.json' with { type: 'json' };
import { functions } from '../../functions/list.ts';
import type { ExcelRig } from './excelRig.ts';
import type { FunctionCall } from './program.ts';
import { startExcel } from './excelRig.ts';

let rig: ExcelRig;

beforeAll(async () => {
  const built = await build({
    entryPoints: ['functions/index.ts'],
    bundle: true,
    format: 'iife',
    write: false,
  });
  rig = await startExcel();
  rig.run(built.outputFiles[0]!.text);
});

afterEach(() => rig.results.clear());

/** Lets the program call functions, and waits for what the runtime sends back. */
async function answersTo(calls: readonly FunctionCall[]): Promise<readonly unknown[][]> {
  rig.invoke(calls);
  for (let waited = 0; rig.results.size < calls.length && waited < 400; waited += 1)
    await new Promise((done) => setTimeout(done, 25));
  return calls.map(([id]) => [...(rig.results.get(id) ?? ['no answer'])]);
}

/** An answer as it goes over the line: an error cell carries its code and, for two of them, its sentence. */
const onWire = (cell: Cell): unknown => {
  if (!isCellError(cell)) return cell;
  return expect.objectContaining({
    ...{ type: 'Error', basicValue: cell.error },
    ...(cell.message !== '' && { message: cell.message }),
  });
};

type Sample = { readonly id: string; readonly args: readonly unknown[] };

const literal = (text: string): unknown => (text.startsWith('"') ? text.slice(1, -1) : Number(text));

/** The arguments of an example, as the program hands them over: ranges as rows, what is left out as null. */
const SAMPLES: readonly Sample[] = functionWords().map(({ id, example }) => {
  const texts = example.slice(example.indexOf('(') + 1, -1).match(/(?:"[^"]*"|\{[^}]*\}|[^,])+/g)!;
  const { parameters } = described.functions.find((each) => each.id === id)!;
  const args = parameters.map(({ dimensionality }, index) => {
    const text = texts[index]?.trim();
    if (text === undefined) return null;
    if (text.startsWith('{'))
      return text
        .slice(1, -1)
        .split(';')
        .map((row) => row.split(',').map(literal));
    return dimensionality === 'matrix' ? [[literal(text)]] : literal(text);
  });
  return { id, args };
});

const runOf = (id: string): ((...given: unknown[]) => Cell[][]) =>
  functions.find((each) => each.id === id)!.run;

/** Functions whose first argument is one column, where 0 can't be meant. */
const NO_ZERO = [
  'MANUFACTUREDATE',
  'LOTNUMBER',
  'STATEOFCHARGE',
  'CRANKINGAMPS',
  'MONTHSINSERVICE',
  'RECHARGEBY',
];

describe('the real runtime', () => {
  it('knows every function of the metadata, and its answers are those of the list', async () => {
    expect(SAMPLES.map(({ id }) => id).sort()).toEqual(functions.map(({ id }) => id).sort());
    const answers = await answersTo(SAMPLES.map(({ id, args }, index) => [index, id, args]));
    SAMPLES.forEach(({ id, args }, index) => {
      const expected = runOf(id)(...args).map((row) => row.map(onWire));
      expect([id, ...answers[index]!]).toEqual([id, true, expected]);
      expect(expected.flat().some((cell) => typeof cell === 'object')).toBe(false);
    });
  });

  it.each([
    ['null, as in a browser', null],
    ['0, as on Windows', 0],
  ])('takes an empty cell that arrives as %s for empty, where 0 cannot be meant', async (_, empty) => {
    const samples = SAMPLES.filter(({ id }) => NO_ZERO.includes(id));
    expect(samples).toHaveLength(NO_ZERO.length);
    const column = ({ args }: Sample): unknown[] => {
      const [first, ...others] = args as readonly [unknown[][], ...unknown[]];
      return [[first[0], [empty], first[0]], ...others];
    };
    const calls = samples.map((sample, index): FunctionCall => [index, sample.id, column(sample)]);
    const answers = await answersTo(calls);
    answers.forEach(([ok, rows], index) => {
      const [first, middle, last] = rows as unknown[][];
      expect([samples[index]!.id, ok, middle]).toEqual([samples[index]!.id, true, ['']]);
      expect(first).toEqual(last);
    });
  });

  it.each([[null], [0]])(
    'answers every function as the list does where an empty cell arrives as %s',
    async (empty) => {
      const calls = SAMPLES.map(({ id, args }, index): FunctionCall => {
        const first = Array.isArray(args[0]) ? (args[0] as unknown[][]) : [[args[0]]];
        return [index, id, [[...first, first[0]!.map(() => empty)], ...args.slice(1)]];
      });
      const expected = calls.map(([, id, given]) => runOf(id)(...given).map((row) => row.map(onWire)));
      const answers = await answersTo(calls);
      answers.forEach((answer, index) => {
        expect([calls[index]![1], ...answer]).toEqual([calls[index]![1], true, expected[index]]);
      });
    },
  );

  it('hands over what is wrong as a sentence, in the cell that it belongs to', async () => {
    const volts = [[12.85], [99], ['x'], [{ code: '#DIV/0!', type: 'CustomFunctionError' }]];
    const [[ok, rows]] = (await answersTo([[1, 'STATEOFCHARGE', [volts, null, null, null, null]]])) as [
      [boolean, unknown[][]],
    ];
    expect(ok).toBe(true);
    expect(rows).toEqual([
      [1],
      [expect.objectContaining({ basicValue: '#VALUE!', message: expect.stringContaining('99') })],
      [expect.objectContaining({ basicValue: '#VALUE!', message: expect.stringContaining('"x"') })],
      [expect.objectContaining({ basicValue: '#DIV/0!' })],
    ]);
  });

  it('never sends what a cell would show as 0: no null, no NaN, rows of one width', async () => {
    const odd = [[null], [''], ['x'], [Number.MAX_VALUE], [-1], [true], [0]];
    const calls = SAMPLES.map(({ id, args }, index): FunctionCall => [index, id, [odd, ...args.slice(1)]]);
    for (const [ok, rows] of await answersTo(calls)) {
      expect(ok).toBe(true);
      const widths = new Set((rows as unknown[][]).map((row) => row.length));
      expect([widths.size, (rows as unknown[][]).flat().includes(null)]).toEqual([1, false]);
    }
  });

  it('answers thousands of calls in a few messages', async () => {
    rig.resetTraffic();
    const calls = Array.from({ length: 5_000 }, (_, index): FunctionCall => {
      return [index, 'STATEOFCHARGE', [[[11.8 + (index % 100) / 100]], null, null, null, null]];
    });
    const answers = await answersTo(calls);
    expect(answers.every(([ok]) => ok === true)).toBe(true);
    expect(rig.traffic.syncs).toBeLessThanOrEqual(6);
  });

  it('answers a column of 20,000 cells in one call', async () => {
    const volts = Array.from({ length: 20_000 }, (_, index) => [11.8 + (index % 100) / 100]);
    const [[ok, rows]] = (await answersTo([[1, 'STATEOFCHARGE', [volts, null, null, null, null]]])) as [
      [boolean, unknown[][]],
    ];
    expect([ok, rows.length]).toEqual([true, 20_000]);
  });
});
