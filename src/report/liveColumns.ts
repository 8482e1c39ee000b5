import { failureWithin } from '../life/failureWithin.ts';
import type { PlannedUnit } from '../planning/planUnits.ts';
import { monthsInService } from '../service/monthsInService.ts';
import type { Draft } from './draft.ts';
import { cell, formula } from './draft.ts';
import type { ReportFacts } from './reportFacts.ts';
import type { SheetCell } from './sheet.ts';
import { address, fixedBlock } from './sheet.ts';

/** Columns of the unit list that cell functions keep up to date, where the settings ask for them. */
export const LIVE_HEADS = [
  'Installed',
  'Months out of a vehicle',
  'Live: months in service',
  'Live: chance in 12 months by the curve above',
];

/** Their cells above the heads: what the formulas of all rows take. */
const SHARED = { labels: ['As of', 'Shape', 'Scale (months)'], row: 1 };

const AHEAD = 12;

/** Writes the as-of day and the fitted curve above the live columns, which begin at a column. */
export function addShared(draft: Draft, { plan, asOf }: ReportFacts, column: number): void {
  const { shape, scale } = plan.life;
  const values = [
    { value: asOf, format: 'date' },
    { value: shape, format: 'thousandths' },
    { value: scale, format: 'thousandths' },
  ] as const;
  SHARED.labels.forEach((label, at) => {
    put(draft, SHARED.row - 1, column + at, cell(label, 'label'));
    put(draft, SHARED.row, column + at, { ...values[at]!, meaning: 'input' });
  });
}

function put(draft: Draft, row: number, column: number, written: SheetCell): void {
  const cells = draft.rows[row]!;
  while (cells.length < column) cells.push(null);
  cells[column] = written;
}

/** The live cells of a battery in a row of the list; their kept values are the same functions' own answers. */
export function liveCells(
  { battery: { installed, monthsOut } }: PlannedUnit,
  { plan, asOf }: ReportFacts,
  row: number,
  column: number,
): SheetCell[] {
  const months = installed === undefined ? undefined : monthsInService(installed, asOf, monthsOut);
  if (installed === undefined || months?.ok !== true) return LIVE_HEADS.map(() => cell(''));
  const { shape, scale } = plan.life;
  const chance = failureWithin(months.value, AHEAD, shape, scale);
  const [asOfAt, shapeAt, scaleAt] = [0, 1, 2].map((at) => fixedCell(SHARED.row, column + at));
  const [from, out, age] = [0, 1, 2].map((at) => address(row, column + at));
  return [
    cell(installed, 'body', 'date'),
    cell(monthsOut, 'body', 'months'),
    formula(`CRANK.MONTHSINSERVICE(${from},${asOfAt},${out})`, months.value, 'months'),
    formula(
      `CRANK.FAILUREWITHIN(${age},${AHEAD},${shapeAt},${scaleAt})`,
      chance.ok ? chance.value : null,
      'chance',
    ),
  ];
}

const fixedCell = (row: number, column: number): string =>
  fixedBlock({ row, column, rows: 1, columns: 1 }).split(':')[0]!;
