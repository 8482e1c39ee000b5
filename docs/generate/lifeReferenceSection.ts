import type { ReferenceRow } from '../../tests/life/reference/referenceRow.ts';
import { referenceCases } from '../../tests/life/reference/referenceRows.ts';
import { markdownTable } from './validationDoc.ts';

const DIGITS = 6;

/** Life statistics case by case: how many values were compared, one of them, and the largest difference. */
export function lifeReferenceSection(): string {
  const misses = referenceCases.flat().filter((row) => row.knownMiss !== undefined);
  return [
    '## Life statistics against other programs',
    'Samples of lives, most of them published, worked out by separate programs: a general statistics system, and 40-digit arithmetic. Each line is one case; it shows how many values were compared, one of them, and the largest difference as a share of what the case allows (a millionth of the value for most estimates). The values themselves stand in `tests/life/reference`.',
    markdownTable(
      ['case', 'lives from', 'values', 'for instance', 'reference', 'ours', 'largest difference / allowed'],
      referenceCases.map(caseCells),
    ),
    '### Not reproduced',
    markdownTable(
      ['case', 'value', 'reference', 'ours', 'why'],
      misses.map((row) => [row.id, row.quantity, shown(row.expected), shown(row.ours()), row.knownMiss!]),
    ),
  ].join('\n\n');
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
    ...[quantity, shown(expected), shown(instance.ours())],
    largest < 0.01 ? 'under 0.01' : largest.toFixed(2),
  ];
}

// Two digits only: further ones are rounding, and differ between machines.
function shareOfAllowed({ expected, within, ours }: ReferenceRow): number {
  if (expected === undefined || within === 0) return 0;
  return Math.round((100 * Math.abs(ours()! - expected)) / within) / 100;
}

const shown = (value: number | undefined): string =>
  value === undefined ? 'not defined' : String(Number(value.toPrecision(DIGITS)));
