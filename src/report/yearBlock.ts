import type { Plan } from '../planning/plan.ts';
import type { PlanYear } from '../planning/planYears.ts';
import { cell } from './draft.ts';
import type { SheetCell } from './sheet.ts';
import { address } from './sheet.ts';

/** Where the rows of a block by fiscal year stand: the first row and how many; the total stands below them. */
export type YearBlock = { readonly row: number; readonly rows: number };

/** The blocks by fiscal year that others refer to. */
export type YearBlocks = {
  readonly counts: YearBlock;
  readonly orders: YearBlock;
  readonly money: YearBlock;
};

/** Columns of the counts that others refer to. */
export const COUNTS = {
  from: 1,
  to: 2,
  dueNow: 3,
  expected: 4,
  '4in5': 7,
  '19in20': 8,
  mates: 9,
  planned: 10,
  fleetChange: 11,
} as const;

/** Columns of the orders that others refer to. */
export const ORDERS = {
  need: 1,
  opening: 2,
  onOrder: 3,
  recovered: 4,
  toOrder: 5,
  closing: 6,
  orderBy: 7,
  goesOut: 8,
  state: 9,
} as const;

/** Columns of the money that others refer to. */
export const MONEY = {
  unitPrice: 1,
  cost: 2,
  refund: 3,
  freight: 4,
  labour: 5,
  needYear: 6,
  orderYear: 7,
} as const;

/** What is counted: failures, or with them the batteries that are renewed before they fail. */
export function countedWord({
  plannedAge,
  settings,
}: Pick<Plan, 'plannedAge' | 'settings'>): 'failures' | 'renewals' {
  return plannedAge === Infinity && !settings.wholeSets ? 'failures' : 'renewals';
}

/** What a cell says where money can't be computed. */
export const NO_PRICE = 'enter a price';

/** The cells of one column of a block, without its total. */
export function columnOf({ row, rows }: YearBlock, column: number): string {
  return `${address(row, column)}:${address(row + rows - 1, column)}`;
}

/** A sum over the years of a plan. */
export function overYears(years: readonly PlanYear[], of: (year: PlanYear) => number): number {
  return years.reduce((sum, year) => sum + of(year), 0);
}

/** Cells of a total row in which nothing is added up. */
export function emptyTotals(count: number): SheetCell[] {
  return Array.from({ length: count }, () => cell(null, 'total'));
}
