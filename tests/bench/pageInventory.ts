import { writeXlsx } from 'hucre/xlsx';
import { isoDay } from '../../src/basics/calendar.ts';
import { columnLetters } from '../../src/report/sheet.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

const HEADS = [
  'Serial',
  'Maker',
  'Type',
  'Manufacture code',
  'Site',
  'Vehicle',
  'Set',
  'Installed',
  'Removed',
  'Removal reason',
  'Rest volts',
  'Temp C',
];
const INSTALLED = HEADS.indexOf('Installed');
const REMOVED = HEADS.indexOf('Removed');
const DAYS_PER_MONTH = 30.4375;

type Row = readonly (string | number | null)[];

/** A generated inventory of twelve columns as an .xlsx file, as a plain block or as a table. */
export async function inventoryFile(rows: number, asOf: number, table?: string): Promise<Uint8Array> {
  const uniform = uniformNumbers(rows);
  const body = Array.from({ length: rows }, (_, index) => batteryRow(uniform, index, asOf));
  const range = `A1:${columnLetters(HEADS.length - 1)}${rows + 1}`;
  const sheet = {
    name: 'Batteries',
    rows: [HEADS, ...body] as (string | number | null)[][],
    cells: new Map(body.flatMap((row, index) => [INSTALLED, REMOVED].flatMap(dated(row, index + 1)))),
    ...(table !== undefined && {
      tables: [{ name: table, range, columns: HEADS.map((name) => ({ name })) }],
    }),
  };
  return writeXlsx({ sheets: [sheet] });
}

const dated =
  (row: Row, index: number) =>
  (column: number): [string, { value: number; style: { numFmt: string } }][] => {
    const value = row[column];
    return typeof value === 'number'
      ? [[`${index},${column}`, { value, style: { numFmt: 'yyyy-mm-dd' } }]]
      : [];
  };

function batteryRow(uniform: () => number, index: number, asOf: number): Row {
  const installed = asOf - 1 - Math.floor(3800 * uniform());
  const removed = Math.floor(installed + weibullLife(uniform, 2.4, 62) * DAYS_PER_MONTH);
  const [year, month] = isoDay(installed - 60).split('-') as [string, string];
  const code = `${month}${year.slice(2)}-${index % 997}`;
  const gone = removed < asOf;
  const read = [Number((12 + 0.9 * uniform()).toFixed(2)), Math.floor(30 * uniform())] as const;
  const end = gone
    ? [removed, index % 4 === 0 ? 'vehicle sold' : 'failed', null, null]
    : [null, null, ...read];
  const [site, vehicle] = [`Site ${index % 23}`, `V${Math.floor(index / 4)}`];
  return [`S${index}`, '9ZZ98', '6T AGM', code, site, vehicle, 'A', installed, ...end];
}
