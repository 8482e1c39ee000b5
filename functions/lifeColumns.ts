import type { Outcome } from '../src/basics/outcome.ts';
import { answer, problem } from '../src/basics/outcome.ts';
import type { LifeColumns } from '../src/life/lifeSample.ts';
import { asBlock, isBlank, isBlankOrZero, numberFrom } from './cell.ts';

/** The three ranges of a removal history as they were handed over. */
type History = {
  readonly months: unknown;
  readonly failed: unknown;
  readonly ageAtRecordStart: unknown;
};

type LifeCells = { readonly months: number; readonly failed: 0 | 1; readonly entry: number };

/** Whether a range holds nothing but blanks and zeros. */
export function isEmpty(range: unknown): boolean {
  return asBlock(range).every((row) => row.every(isBlankOrZero));
}

/**
 * A removal history as columns of numbers: rows whose months are blank or 0 are left out, a blank `failed` is 0, a blank
 * `ageAtRecordStart` is 0. A single cell stands for its whole column.
 * @problem badInput  when the ranges differ in shape, or a row can't be a life; the row is named
 */
export function lifeColumns(history: History): Outcome<LifeColumns> {
  const blocks = [history.months, history.failed, history.ageAtRecordStart].map(asBlock);
  const shapes = blocks.map((block) => `${block.length} x ${block[0]?.length ?? 0}`);
  const odd = shapes.find((shape) => shape !== '1 x 1' && shape !== shapes[0]);
  if (odd !== undefined) {
    return problem('badInput', 'shapesDiffer', 'the ranges', undefined, {
      more: { first: shapes[0]!, second: odd },
    });
  }
  const [months, failed, entry] = blocks.map((block) => block.flat());
  return gathered(months!, cellOf(failed!), cellOf(entry!));
}

type CellAt = (index: number) => unknown;

const cellOf = (cells: readonly unknown[]): CellAt =>
  cells.length === 1 ? () => cells[0] : (index) => cells[index];

function gathered(months: readonly unknown[], failedAt: CellAt, entryAt: CellAt): Outcome<LifeColumns> {
  const columns = { months: new Float64Array(months.length), failed: new Uint8Array(months.length) };
  const entry = new Float64Array(months.length);
  let size = 0;
  for (const [index, cell] of months.entries()) {
    if (isBlankOrZero(cell)) continue;
    const life = lifeOf(cell, failedAt(index), entryAt(index), index + 1);
    if (!life.ok) return life;
    columns.months[size] = life.value.months;
    columns.failed[size] = life.value.failed;
    entry[size] = life.value.entry;
    size += 1;
  }
  return answer({
    months: columns.months.subarray(0, size),
    failed: columns.failed.subarray(0, size),
    entry: entry.subarray(0, size),
  });
}

function lifeOf(age: unknown, failed: unknown, start: unknown, row: number): Outcome<LifeCells> {
  const months = numberFrom(age, `months in row ${row} of the range`);
  if (!months.ok) return months;
  const entry = isBlank(start) ? answer(0) : numberFrom(start, `ageAtRecordStart in row ${row} of the range`);
  if (!entry.ok) return entry;
  const fate = fateOf(failed);
  if (fate === undefined) return problem('badInput', 'failedNotYesOrNo', 'failed', failed, { more: { row } });
  if (months.value < 0)
    return problem('badInput', 'negativeMonths', 'months', months.value, { more: { row } });
  if (entry.value < 0) {
    return problem('badInput', 'negativeMonths', 'ageAtRecordStart', entry.value, { more: { row } });
  }
  if (entry.value >= months.value) {
    return problem('badInput', 'recordStartsTooLate', 'ageAtRecordStart', entry.value, {
      more: { row, months: months.value },
    });
  }
  return answer({ months: months.value, failed: fate, entry: entry.value });
}

function fateOf(failed: unknown): 0 | 1 | undefined {
  if (isBlank(failed) || failed === 0 || failed === false) return 0;
  return failed === 1 || failed === true ? 1 : undefined;
}
