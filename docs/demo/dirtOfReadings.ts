import type { Dirt } from './dirtyRow.ts';
import { inService, inStock, removed, tested, turn } from './dirtyRow.ts';
import { FAHRENHEIT_STATION } from './register.ts';
import type { Row } from './register.ts';
import { round } from './readings.ts';

const testedInService = (row: Row): boolean => inService(row) && tested(row);
const readAmps = (row: Row): boolean => testedInService(row) && row.cells.reading !== undefined;
const celsiusStation = ({ site }: Row): boolean => site!.name !== FAHRENHEIT_STATION;
const volts = (row: Row): string => Number(row.cells.restVolts).toFixed(2);

/** What goes wrong with readings. */
export const readingDirt: readonly Dirt[] = [
  {
    kind: 'number with its unit',
    count: 6,
    fits: (row) => readAmps(row) && typeof row.cells.temperature === 'number',
    spoil: (row, _, index) => {
      if (index % 3 === 0) row.cells.restVolts = `${volts(row)}V`;
      else if (index % 3 === 1) row.cells.temperature = fahrenheitText(row);
      else row.cells.reading = `${String(row.cells.reading)} A`;
    },
  },
  {
    kind: 'decimal comma',
    count: 8,
    fits: testedInService,
    spoil: (row) => {
      row.cells.restVolts = volts(row).replace('.', ',');
    },
  },
  {
    kind: 'number stored as text',
    count: 6,
    fits: testedInService,
    spoil: (row) => {
      row.cells.restVolts = volts(row);
    },
  },
  setVolts('unreadable number', ['low', '12..6'], testedInService),
  setVolts('whole 24 V set', [25.3, 25.12, 24.6], testedInService),
  setVolts('no rest voltage of a battery', [16.9, 34.2, -12.5], testedInService),
  setVolts('on charge or not rested', [13.42, 13.75, 14.1, 13.31], testedInService),
  setVolts('deeply discharged', [8.4, 10.2, 6.9, 11.12], testedInService),
  setVolts('error in the cell', ['#N/A', '#DIV/0!'], testedInService),
  {
    kind: 'charged and tested the same day',
    count: 4,
    fits: testedInService,
    spoil: ({ cells }) => {
      cells.chargedOn = cells.testedOn;
    },
  },
  {
    kind: 'temperature no battery can have',
    count: 2,
    fits: (row) => testedInService(row) && celsiusStation(row),
    spoil: ({ cells }, _, index) => {
      cells.temperature = turn([150, -80], index);
    },
  },
  {
    kind: 'reading without a least',
    count: 5,
    fits: readAmps,
    spoil: ({ cells }) => {
      delete cells.least;
    },
  },
  {
    kind: 'reading and least in different units',
    count: 2,
    fits: readAmps,
    spoil: ({ cells }) => {
      cells.least = 9.6;
    },
  },
  {
    kind: 'ratings of mixed kinds',
    count: 4,
    fits: (row) => inService(row) && row.battery!.kind === '6T AGM',
    spoil: ({ cells }, _, index) => {
      cells.rating = turn(['1100 EN', '1100 CCA', '1050 EN', '660 DIN'], index);
    },
  },
  {
    kind: 'condemned but still in service',
    count: 3,
    fits: testedInService,
    spoil: ({ cells }, _, index) => {
      cells.damage = turn(['case cracked', 'post loose', 'bulged'], index);
    },
  },
  {
    kind: 'may freeze here',
    count: 4,
    fits: (row) => testedInService(row) && !row.site!.heatedStore,
    spoil: (row, chance) => {
      row.cells.restVolts = round(chance.between(11.9, 12.1), 2);
      row.cells.temperature = 4;
    },
  },
  {
    kind: 'standing in a vehicle over 30 days',
    count: 5,
    fits: (row) => inService(row) && row.cells.chargedOn === undefined && !row.site!.heatedStore,
    spoil: ({ cells }, _, index) => {
      cells.status = turn(['laid up since April', 'parked for the season', 'laid up'], index);
    },
  },
  {
    kind: 'retest claimed by "recharged" alone',
    count: 3,
    fits: (row) => readAmps(row) && row.cells.recharged === 'n',
    spoil: ({ cells }) => {
      cells.recharged = 'y';
    },
  },
  {
    kind: 'reading differs from the Tests sheet',
    count: 3,
    fits: readAmps,
    spoil: ({ cells }) => {
      cells.reading = Number(cells.reading) + 100;
    },
  },
];

/** Kinds whose rows have no line in sheet Tests: the crew wrote in the register only. */
export const registerOnly: ReadonlySet<string> = new Set(
  readingDirt.map(({ kind }) => kind).filter((kind) => !kind.startsWith('reading differs')),
);

function setVolts(
  kind: Dirt['kind'],
  values: readonly (string | number)[],
  fits: (row: Row) => boolean,
): Dirt {
  const spoil: Dirt['spoil'] = ({ cells }, _, index) => {
    cells.restVolts = turn(values, index);
  };
  return { kind, count: values.length, fits, spoil };
}

function fahrenheitText({ cells, site }: Row): string {
  const degrees = Number(cells.temperature);
  return `${site!.name === FAHRENHEIT_STATION ? degrees : Math.round(degrees * 1.8 + 32)} F`;
}

/** Rows in use that a hidden row can be taken from. */
export const mayBeHidden = (row: Row): boolean => removed(row) || inStock(row);
