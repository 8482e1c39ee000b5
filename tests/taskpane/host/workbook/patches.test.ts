import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Engine } from '../../../../taskpane/host/workbook/functions.ts';
import { PATCHED_RELEASE, patchIndex } from '../../../../taskpane/host/workbook/indexPatch.ts';
import { patchLiterals } from '../../../../taskpane/host/workbook/literals.ts';

const engine = createRequire(import.meta.url)('@univerjs/engine-formula') as Engine;

type Index = {
  set: (book: string, sheet: string, column: number, value: unknown, row: number, force?: boolean) => void;
  getCellValuePositions: (
    book: string,
    sheet: string,
    column: number,
  ) => Map<unknown, Set<number>> | undefined;
};
const newIndex = (): Index =>
  new (engine.CELL_INVERTED_INDEX_CACHE as unknown as { constructor: new () => Index }).constructor();

function patched(version: string): Index {
  const index = newIndex();
  patchIndex({
    CELL_INVERTED_INDEX_CACHE: index,
    UniverFormulaEnginePlugin: { version },
  } as unknown as Engine);
  return index;
}

/** Which rows stand under which value; values that no row has any more don't count. */
const positions = (index: Index, column: number): [unknown, number[]][] =>
  [...(index.getCellValuePositions('book', 'sheet', column) ?? [])]
    .filter(([, rows]) => rows.size > 0)
    .map(([value, rows]): [unknown, number[]] => [value, [...rows].sort((a, b) => a - b)])
    .sort(([, a], [, b]) => a[0]! - b[0]!);

describe('the mended index of the formula engine', () => {
  it('is made for the release that is installed', () => {
    const { version } = engine.UniverFormulaEnginePlugin as unknown as { readonly version: string };
    expect(version).toBe(PATCHED_RELEASE);
    expect(Object.hasOwn(patched(version), 'set')).toBe(true);
  });

  it('leaves another release as it is', () => {
    expect(Object.hasOwn(patched('0.26.0'), 'set')).toBe(false);
  });

  it('holds what the engine’s own holds, whatever is read and calculated', () => {
    const value = fc.constantFrom<unknown>(1, 2, 0, '1', 'a', 'A', 'b', '', null, true);
    const step = fc.tuple(fc.nat(1), value, fc.nat(6), fc.boolean());
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const [own, mended] = [newIndex(), patched(PATCHED_RELEASE)];
        // What is not forced is the reading of a cell: it finds the value that stands there.
        const standing = new Map<string, unknown>();
        for (const [column, given, row, force] of steps) {
          const cell = `${column}|${row}`;
          if (force || !standing.has(cell)) standing.set(cell, given);
          for (const index of [own, mended]) {
            index.set('book', 'sheet', column, standing.get(cell), row, force);
          }
        }
        for (const column of [0, 1]) expect(positions(mended, column)).toEqual(positions(own, column));
      }),
      { seed: 20260315, numRuns: 300 },
    );
  });
});

describe('the mended reading of literals', () => {
  const mended = { ...engine, ValueObjectFactory: class extends engine.ValueObjectFactory {} } as Engine;
  patchLiterals(mended);
  const { create } = mended.ValueObjectFactory;
  const rows = (written: string): unknown[][] => {
    const array = create(written, true) as InstanceType<Engine['ArrayValueObject']>;
    return array.getArrayValue().map((row) => row.map((cell) => cell!.getValue()));
  };

  it.each([
    ['12.60', 12.6],
    ['-007', -7],
    ['1E3', 1000],
    ['.5', 0.5],
    ['"12.60"', '12.60'],
    ['"1E3"', '1E3'],
    ['03/04/2026', '03/04/2026'],
    ['TRUE', true],
  ])('%s where the function wants it as typed', (written, value) => {
    expect(create(written, true).getValue()).toBe(value);
  });

  it('array constants', () => {
    expect(rows('{12.60,"a;b";"say ""x, y""",TRUE}')).toEqual([
      [12.6, 'a;b'],
      ['say "x, y"', true],
    ]);
    expect(rows('{1}')).toEqual([[1]]);
  });

  it('an array constant with rows of two lengths is an error', () => {
    expect(create('{1,2;3}', false).isError()).toBe(true);
  });

  it('the values of cells stay the engine’s own business', () => {
    expect(create('12.60').getValue()).toBe(engine.ValueObjectFactory.create('12.60').getValue());
    expect(create(3).getValue()).toBe(3);
  });
});
