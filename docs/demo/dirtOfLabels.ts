import { dayFromParts, dayParts } from '../../src/basics/calendar.ts';
import type { Dirt } from './dirtyRow.ts';
import { inService, tested, turn } from './dirtyRow.ts';
import type { Row } from './register.ts';

const monthYearMaker = ({ battery }: Row): boolean =>
  battery!.maker === '9ZZ98' || battery!.maker === '9ZZ96';
const madeBeforeOctober = ({ battery }: Row): boolean => dayParts(battery!.made).month < 10;

/** What goes wrong with codes, serials, stock numbers and maker codes on their way into a sheet. */
export const labelDirt: readonly Dirt[] = [
  {
    kind: 'unreadable code',
    count: 6,
    fits: () => true,
    spoil: ({ cells }, _, index) => {
      cells.code = turn(['??24-11', 'worn off', '1324-207', 'illegible', '0024-118', '0391-112'], index);
    },
  },
  {
    kind: 'code later than as-of',
    count: 3,
    fits: monthYearMaker,
    spoil: ({ cells }, _, index) => {
      cells.code = turn(['0927-114', '1126-301', '0328-209'], index);
    },
  },
  {
    kind: 'leading zero eaten',
    count: 6,
    fits: (row) => monthYearMaker(row) && madeBeforeOctober(row),
    spoil: ({ cells, battery }) => {
      cells.code = Number(battery!.code.slice(0, 4));
    },
  },
  {
    kind: 'serial that lost its zeros',
    count: 3,
    fits: (row) => row.battery!.maker === '9ZZ98' && !tested(row),
    spoil: ({ cells, battery }) => {
      cells.serial = Number(battery!.serial);
    },
  },
  {
    kind: 'dash turned to a long dash',
    count: 5,
    fits: () => true,
    spoil: ({ cells, battery }, _, index) => {
      cells.code = battery!.code.replace('-', turn(['–', '—', '−'], index));
    },
  },
  {
    kind: 'code turned to a date',
    count: 3,
    fits: monthYearMaker,
    spoil: ({ cells, battery }) => {
      const { year, month } = dayParts(battery!.made);
      cells.code = { day: dayFromParts(year, month, 1)!, format: 'mmm-yy' };
    },
  },
  {
    kind: 'long number in scientific form',
    count: 3,
    fits: () => true,
    spoil: ({ cells }) => {
      cells.stockNumber = '6.14E+12';
    },
  },
  {
    kind: 'stock number stored as a number',
    count: 5,
    fits: () => true,
    spoil: ({ cells }) => {
      cells.stockNumber = Number(String(cells.stockNumber).replaceAll('-', ''));
    },
  },
  {
    kind: 'stock number malformed',
    count: 4,
    fits: () => true,
    spoil: ({ cells }, _, index) => {
      cells.stockNumber = turn(
        ['6140-99-000-123', '6140/99/000', '6140-99-0000-0123', '614O-99-000-0123'],
        index,
      );
    },
  },
  {
    kind: 'maker code malformed',
    count: 3,
    fits: ({ battery }) => battery!.maker === '9ZZ98',
    spoil: ({ cells }, _, index) => {
      cells.maker = turn(['9ZZ9O', '9ZI98', 'ZZ98'], index);
    },
  },
  {
    kind: 'flooded judged as AGM',
    count: 3,
    fits: (row) => inService(row) && row.battery!.kind === '6T flooded',
    spoil: ({ cells }) => {
      cells.type = '6T AGM';
    },
  },
  {
    kind: 'construction unknown',
    count: 4,
    fits: (row) => inService(row) && row.battery!.kind === '6T AGM',
    spoil: ({ cells }, _, index) => {
      cells.type = turn(['12 V battery', 'Battery, storage', '6T', 'battery'], index);
      delete cells.stockNumber;
      delete cells.maker;
    },
  },
  {
    kind: 'text that looks like a formula',
    count: 2,
    fits: () => true,
    spoil: ({ cells }, _, index) => {
      cells.remarks = turn(['=see log', '=1+1 spare'], index);
    },
  },
  {
    kind: 'station spelled otherwise',
    count: 5,
    fits: () => true,
    spoil: ({ cells, site }, _, index) => {
      cells.site = index % 2 === 0 ? `${site!.name} ` : site!.name.toUpperCase();
    },
  },
];
