import type { Day } from '../../src/basics/calendar.ts';

/** What a cell of the demonstration holds; a date is a real date cell unless it is dirt. */
export type DemoCell = string | number | { readonly day: Day; readonly format: string } | FormulaCell;

/** A cell with a formula of the spreadsheet's own and its answer. */
export type FormulaCell = { readonly formula: string; readonly result: number; readonly format: string };

/** A column of sheet Inventory: the header as its clerks wrote it, its width and its number format. */
export type DemoColumn = {
  readonly key: string;
  readonly group: string;
  readonly header: string;
  readonly width: number;
  readonly format?: string;
};

/** The columns of sheet Inventory, in order; `group` stands in the row above the header. */
export const COLUMNS = [
  { key: 'number', group: '', header: 'No.', width: 6 },
  { key: 'serial', group: 'Battery', header: 'Batt S/N', width: 11 },
  { key: 'stockNumber', group: '', header: 'NSN', width: 18 },
  { key: 'type', group: '', header: 'Description', width: 18 },
  { key: 'maker', group: '', header: 'Mfr', width: 8 },
  { key: 'code', group: '', header: 'Date code', width: 11 },
  { key: 'site', group: 'Where', header: 'Station', width: 15 },
  { key: 'vehicle', group: '', header: 'Veh', width: 9 },
  { key: 'usedIn', group: '', header: 'Fleet group', width: 22 },
  { key: 'set', group: '', header: 'Set', width: 6 },
  { key: 'place', group: '', header: 'Pos', width: 5 },
  { key: 'installed', group: 'In and out', header: 'Fitted on', width: 12 },
  { key: 'watchedSince', group: '', header: 'On books since', width: 14 },
  { key: 'removed', group: '', header: 'Date off', width: 12 },
  { key: 'cause', group: '', header: 'Why removed', width: 22 },
  { key: 'status', group: '', header: 'Status', width: 12 },
  { key: 'damage', group: 'Last check', header: 'Damage seen', width: 14 },
  { key: 'restVolts', group: '', header: 'Rest V', width: 8, format: '0.00' },
  { key: 'temperature', group: '', header: 'Temp', width: 7 },
  { key: 'reading', group: '', header: 'CCA read', width: 9 },
  { key: 'loadVolts', group: '', header: 'Load V', width: 8, format: '0.0' },
  { key: 'least', group: '', header: 'Min CCA', width: 9 },
  { key: 'rating', group: '', header: 'CCA label', width: 10 },
  { key: 'testedOn', group: '', header: 'Tested', width: 12 },
  { key: 'recharged', group: '', header: 'Recharged y/n', width: 13 },
  { key: 'chargedOn', group: '', header: 'Last charge', width: 12 },
  { key: 'storagePlace', group: 'Stores', header: 'Shelf', width: 9 },
  { key: 'pricePaid', group: '', header: 'Price paid', width: 11, format: '#,##0.00' },
  { key: 'remarks', group: '', header: 'Remarks', width: 28 },
] as const satisfies readonly DemoColumn[];

/** The key of a column of sheet Inventory. */
export type ColumnKey = (typeof COLUMNS)[number]['key'];

/** Cells of one row. */
export type Cells = Partial<Record<ColumnKey, DemoCell>>;
