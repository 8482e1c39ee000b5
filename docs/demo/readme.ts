import { COLUMNS } from './columns.ts';
import { columnLetters, ROWS_ABOVE } from './arrange.ts';
import { grownByItself, stationLines, truthOf } from './census.ts';
import type { Demo } from './demo.ts';
import { SEED } from './demo.ts';
import type { Planted } from './dirtyRow.ts';
import { codeLayouts } from './labels.ts';
import type { Row } from './register.ts';
import { BAD_LOT, BAD_VEHICLE, OTHER_REMOVALS_A_MONTH, TRUTH } from './service.ts';

/** docs/demo/README.md: what was planted and the truth behind it. */
export function readmeOf(demo: Demo): string {
  return (
    [...intro(demo), ...truth(demo), ...stations(demo), ...planted(demo), ...grown(demo), ...layouts()].join(
      '\n',
    ) + '\n'
  );
}

const intro = ({ register, sides, lastMonth }: Demo): readonly string[] => [
  '# The demonstration inventory',
  '',
  '`norrfell-inventory.xlsx` is the battery register of the *Norrfell winter-road and rescue service*, which does not',
  'exist. Stations, vehicles, stock numbers, maker codes, prices and readings are invented. `npm run demo` makes the',
  `workbook and this page again, the same each time (seed ${SEED}). As-of is 2026-06-30.`,
  '',
  `Sheet \`Inventory\`: ${register.length} rows under a title, a note and two header rows. ${sides
    .map(({ name, lines }) => `Sheet \`${name}\`: ${lines.length} lines.`)
    .join(' ')} Sheet \`Notes\`: the same in prose.`,
  '',
  `\`norrfell-isvarg-may.xlsx\` is one station’s file of the month before (${lastMonth.length} rows, as of 2026-05-31), to compare`,
  'with. Its workbook counts days from 1904. `norrfell-settings.json` holds what its planner has answered: record start,',
  'weather of the stations, prices, stock and orders.',
  '',
];

const truth = ({ batteries }: Demo): readonly string[] => [
  '## The truth of the generator',
  '',
  `Lives follow a Weibull law of shape ${TRUTH.shape} and scale ${TRUTH.scale} months of service, times the factor of the station below;`,
  `flooded batteries last 0.85 times as long. About ${OTHER_REMOVALS_A_MONTH * 100} % a month leave for other reasons; where one of a set`,
  'fails, a share of stations renew the whole set (mates of 18 months and more). Every removal since 2021-04-01 is',
  'written down (Vintermark: since 2022-09-01); batteries taken off before are not in the sheet. Lot',
  `${BAD_LOT.lot} of ${BAD_LOT.maker} lasts ${BAD_LOT.lifeFactor} times as long as others. One ${BAD_VEHICLE.kind.toLowerCase()} of ${BAD_VEHICLE.site} has a bad charging system`,
  `(${BAD_VEHICLE.lifeFactor} times): ${ruinousVehicle(batteries)}. What will happen after as-of is known too: the table counts first failures`,
  'of those in service now, with no other removals. One curve through all rows is a little flatter and earlier than the',
  'law above: it mixes stations, flooded batteries, the bad lot and the bad vehicle.',
  '',
  '| fact | count |',
  '| --- | ---: |',
  ...truthOf(batteries).map(({ what, count }) => `| ${what} | ${count} |`),
  '',
];

const ruinousVehicle = (batteries: Demo['batteries']): string =>
  batteries.flatMap(({ stints }) => stints).find(({ vehicle }) => vehicle.lifeFactor < 1)!.vehicle.name;

const stations = ({ register }: Demo): readonly string[] => [
  '## Stations',
  '',
  '| station | rows | in service | failed | lives last | whole sets | coldest C | average C | heated store | watched since |',
  '| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- | --- |',
  ...stationLines(register),
  '',
];

const planted = (demo: Demo): readonly string[] => [
  '## Planted by hand',
  '',
  'Row numbers are those of sheet `Inventory`. A row has one kind of planted dirt only.',
  '',
  '| kind | count | where |',
  '| --- | ---: | --- |',
  ...demo.planted.map((one) => plantedLine(demo, one)),
  ...marks(demo.register),
  '| serial not in the inventory, row without serial or date | 5 | last lines of `Tests` and `Charges` |',
  '',
];

function plantedLine({ register }: Demo, { kind, rows }: Planted): string {
  const numbers = rows.map((row) => ROWS_ABOVE + 1 + register.indexOf(row)).sort((a, b) => a - b);
  const shown = numbers.slice(0, 4).join(', ');
  return `| ${kind} | ${rows.length} | row ${shown}${numbers.length > 4 ? ', …' : ''} |`;
}

function marks(register: readonly Row[]): readonly string[] {
  const line = (what: string, ...kinds: readonly Row['kind'][]): string => {
    const found = register.flatMap(({ kind }, index) =>
      kinds.includes(kind) ? [ROWS_ABOVE + 1 + index] : [],
    );
    return `| ${what} | ${found.length} | row ${found.slice(0, 4).join(', ')}${found.length > 4 ? ', …' : ''} |`;
  };
  return [
    line('station heading row', 'heading'),
    line('subtotal or total row', 'subtotal', 'total'),
    line('blank row', 'blank'),
  ];
}

const grown = ({ register, stories }: Demo): readonly string[] => [
  '## Came by itself',
  '',
  'These follow from how the fleet was kept; the counts are the generator’s own, by its own dates.',
  '',
  '| kind | count |',
  '| --- | ---: |',
  ...grownByItself(register, stories.tests).map(({ what, count }) => `| ${what} | ${count} |`),
  '',
];

const layouts = (): readonly string[] => [
  '## Columns and codes',
  '',
  `Headers: ${COLUMNS.map(({ header }, index) => `${columnLetters(index)} ${header}`).join(' · ')}.`,
  '"Recharged y/n" is a trap: that a battery was charged does not make its reading a retest.',
  '',
  '| maker (invented) | layout of the code |',
  '| --- | --- |',
  ...codeLayouts.map(([maker, layout]) => `| ${maker} | \`${layout}\` |`),
];
