import type { NotOurs, PublishedCheck } from '../../tests/published/check.ts';
import { allowedDifference } from '../../tests/published/check.ts';

type Cells = readonly (string | number | boolean)[];

/** A table in Markdown; bars and angle brackets in a cell are escaped. */
export function markdownTable(heads: readonly string[], rows: readonly Cells[]): string {
  const line = (cells: Cells): string =>
    `| ${cells.map((cell) => String(cell).replace(/\|/g, '\\|').replace(/</g, '&lt;')).join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

/** The page on which every value from outside stands beside ours. */
export function validationDoc(
  checks: readonly PublishedCheck[],
  notOurs: readonly NotOurs[],
  more: readonly string[] = [],
): string {
  const agreeing = checks.filter((check) => check.knownMiss === undefined);
  const missing = checks.filter((check) => check.knownMiss !== undefined);
  return [
    '# Validation',
    'Written by `npm run docs` from the rows that the tests run; a test fails when this page differs from them.',
    'The tolerance is half a unit of the last printed digit unless the row says more. Keys of sources are those of [sources.md](sources.md).',
    '## Published values',
    markdownTable(
      ['id', 'quantity', 'given', 'published', 'ours', 'difference', 'allowed', 'source'],
      agreeing.map(checkCells),
    ),
    '## Known misses',
    'Published values that we knowingly do not reproduce. A test fails when one starts to agree.',
    markdownTable(
      ['id', 'quantity', 'given', 'published', 'ours', 'source', 'why'],
      missing.map((check) => [...missCells(check), check.knownMiss!]),
    ),
    '## Not computed here',
    markdownTable(
      ['id', 'quantity', 'why'],
      notOurs.map(({ id, quantity, because }) => [id, quantity, because]),
    ),
    ...more,
    '',
  ].join('\n\n');
}

function checkCells(check: PublishedCheck): Cells {
  const { id, quantity, given, expected, tolerance } = check;
  const ours = check.ours();
  const allowed = typeof expected === 'number' ? shortNumber(allowedDifference(check)) : 'equal';
  const why = tolerance === undefined ? '' : ` (${tolerance.because})`;
  return [
    id,
    quantity,
    given,
    expected,
    shown(ours, check),
    difference(ours, check),
    `${allowed}${why}`,
    sourceOf(check),
  ];
}

const missCells = (check: PublishedCheck): Cells => [
  check.id,
  check.quantity,
  check.given,
  check.expected,
  shown(check.ours(), check),
  sourceOf(check),
];

const sourceOf = ({ source, where }: PublishedCheck): string =>
  where === '' ? source : `${source}, ${where}`;

/** Our value with two digits more than were printed: what is further behind depends on the machine. */
function shown(ours: number | string | boolean, { digits }: PublishedCheck): string {
  return typeof ours === 'number' ? String(Number(ours.toFixed((digits ?? 2) + 2))) : String(ours);
}

function difference(ours: number | string | boolean, check: PublishedCheck): string {
  const { expected } = check;
  if (typeof ours !== 'number' || typeof expected !== 'number') return ours === expected ? 'none' : 'differs';
  return shown(ours - expected, check);
}

const shortNumber = (value: number): string => String(Number(value.toPrecision(2)));
