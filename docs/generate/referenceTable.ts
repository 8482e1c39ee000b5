import type { ReferenceRow } from '../../tests/life/reference/referenceRow.ts';
import { markdownTable } from './validationDoc.ts';

const DIGITS = 6;

/**
 * Reference values case by case: how many were compared, one of them, and the largest difference.
 * @param inputs  head of the column that says where a case's inputs are from
 */
export function referenceTable(cases: readonly (readonly ReferenceRow[])[], inputs: string): string {
  return markdownTable(
    ['case', inputs, 'values', 'for instance', 'reference', 'ours', 'largest difference / allowed'],
    cases.map(caseCells),
  );
}

function caseCells(all: readonly ReferenceRow[]): (string | number)[] {
  const rows = all.filter((row) => row.knownMiss === undefined);
  // Counts agree as a matter of course: the instance is a figure that had to be worked out.
  const instance =
    rows.find(({ expected }) => expected !== undefined && !Number.isInteger(expected)) ?? rows[0]!;
  const { id, title, source, quantity, expected } = instance;
  const largest = Math.max(...rows.map(shareOfAllowed));
  return [
    `${id} ${title}`,
    source === 'madeUp' ? 'made up' : source,
    rows.length,
    ...[quantity, shownFigure(expected), shownFigure(instance.ours())],
    largest < 0.01 ? 'under 0.01' : largest.toFixed(2),
  ];
}

// Two digits only: further ones are rounding, and differ between machines.
function shareOfAllowed({ expected, within, ours }: ReferenceRow): number {
  if (expected === undefined || within === 0) return 0;
  return Math.round((100 * Math.abs(ours()! - expected)) / within) / 100;
}

/** A figure with the digits that are the same on every machine. */
export const shownFigure = (value: number | undefined): string =>
  value === undefined ? 'not defined' : String(Number(value.toPrecision(DIGITS)));
