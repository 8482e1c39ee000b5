import type { Day } from '../../src/basics/calendar.ts';
import { addMonths, dayFromParts, dayParts, isoDay, momentOfDay } from '../../src/basics/calendar.ts';
import type { ColumnKey } from './columns.ts';
import type { Dirt } from './dirtyRow.ts';
import { inService, inStock, onShelfBefore, removed, tested, turn } from './dirtyRow.ts';
import type { Row } from './register.ts';
import { dateCell } from './register.ts';
import { AS_OF } from './service.ts';

const fitted = (row: Row): Day => row.stint!.from;
const dayOfMonth = (row: Row): number => dayParts(fitted(row)).day;
const aged = (row: Row): boolean => inService(row) && fitted(row) < AS_OF - 400;

function put(row: Row, column: ColumnKey, day: Day): void {
  row.cells[column] = dateCell(day, row.site!);
}

/** What goes wrong with dates. */
export const dateDirt: readonly Dirt[] = [
  {
    kind: 'text date',
    count: 8,
    fits: (row) => inService(row) && dayOfMonth(row) > 12,
    spoil: (row, _, index) => {
      row.cells.installed = momentOfDay(fitted(row)).toFormat(
        turn(['dd/MM/yyyy', 'd MMM yyyy', 'dd.MM.yyyy'], index),
      );
    },
  },
  {
    kind: 'text date that reads two ways',
    count: 6,
    fits: (row) => inService(row) && dayOfMonth(row) <= 12 && dayOfMonth(row) !== dayParts(fitted(row)).month,
    spoil: (row) => {
      row.cells.installed = momentOfDay(fitted(row)).toFormat('dd/MM/yyyy');
    },
  },
  {
    kind: 'date written as a number',
    count: 4,
    fits: inService,
    spoil: (row) => {
      row.cells.installed = Number(isoDay(fitted(row)).replaceAll('-', ''));
    },
  },
  {
    kind: 'unreadable date',
    count: 3,
    fits: inService,
    spoil: ({ cells }, _, index) => {
      cells.installed = turn(['spring 24', 'before winter', '31/02/2024'], index);
    },
  },
  {
    kind: 'year only',
    count: 2,
    fits: inService,
    spoil: (row) => {
      row.cells.installed = dayParts(fitted(row)).year;
    },
  },
  {
    kind: 'removed, known to the month',
    count: 3,
    fits: removed,
    spoil: (row) => {
      row.cells.removed = momentOfDay(row.stint!.to!).toFormat('MMM yyyy');
    },
  },
  {
    kind: 'date later than as-of',
    count: 4,
    fits: aged,
    spoil: (row) => {
      const { month, day } = dayParts(fitted(row));
      put(row, 'installed', dayFromParts(2062, month, Math.min(day, 28))!);
    },
  },
  {
    kind: 'installed before made',
    count: 4,
    fits: aged,
    spoil: (row, chance) => put(row, 'installed', row.battery!.made - chance.whole(60, 300)),
  },
  {
    kind: 'removed before installed',
    count: 3,
    fits: (row) => removed(row) && row.stint!.from > row.battery!.made + 90,
    spoil: (row, chance) => put(row, 'removed', row.stint!.from - chance.whole(5, 60)),
  },
  {
    kind: 'removed on the day installed',
    count: 2,
    fits: (row) => removed(row) && row.stint!.cause === 'failed',
    spoil: (row) => put(row, 'removed', row.stint!.from),
  },
  {
    kind: 'removed, date missing',
    count: 3,
    fits: removed,
    spoil: ({ cells }) => {
      delete cells.removed;
      cells.status = 'removed';
    },
  },
  {
    kind: 'status and removal date disagree',
    count: 3,
    fits: removed,
    spoil: ({ cells }) => {
      cells.status = 'in use';
    },
  },
  {
    kind: 'in stock with an installed date',
    count: 2,
    fits: inStock,
    spoil: (row, chance) => put(row, 'installed', AS_OF - chance.whole(10, 60)),
  },
  {
    kind: 'placeholder',
    count: 8,
    fits: (row) => inService(row) && !tested(row),
    spoil: ({ cells }, _, index) => {
      const [column, word] = turn<readonly [ColumnKey, string | number]>(PLACEHOLDERS, index);
      cells[column] = word === 1 ? { day: 1, format: 'dd/mm/yyyy' } : word;
    },
  },
  {
    kind: 'removal cause not understood',
    count: 3,
    fits: removed,
    spoil: ({ cells }, _, index) => {
      cells.cause = turn(['B7', 'per instruction 14', 'mice'], index);
    },
  },
  {
    kind: 'long on the shelf or moved',
    count: 4,
    fits: (row) => aged(row) && onShelfBefore(row) < 12 && row.battery!.stints.length === 1,
    spoil: (row) => {
      put(row, 'installed', addMonths(AS_OF, -3));
      row.cells.remarks = 'came from another vehicle';
    },
  },
];

const PLACEHOLDERS: readonly (readonly [ColumnKey, string | number])[] = [
  ['installed', 1],
  ['code', 'TBD'],
  ['removed', 'N/A'],
  ['installed', 'TBD'],
  ['restVolts', 9999],
  ['installed', 1],
  ['stockNumber', 'N/A'],
  ['serial', 'unknown'],
];
