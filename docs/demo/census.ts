import { isoDay } from '../../src/basics/calendar.ts';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import type { DemoBattery } from './fleet.ts';
import { inService, inStock, onShelfBefore, removed, tested } from './dirtyRow.ts';
import type { Row } from './register.ts';
import { FAHRENHEIT_STATION, latestStint, recordedStints, watchedFrom } from './register.ts';
import { spentAtAsOf, testsByBattery } from './stories.ts';
import type { DemoTest } from './stories.ts';
import { AS_OF, BAD_LOT, SITES } from './service.ts';

/** A fact of the demonstration and how often it holds. */
export type Counted = { readonly what: string; readonly count: number };

const TWELVE_MONTHS = 12 * DAYS_PER_MONTH;
const count = (what: string, list: readonly unknown[]): Counted => ({ what, count: list.length });

/** Things to check that came by themselves, without a hand that planted them. */
export function grownByItself(rows: readonly Row[], tests: readonly DemoTest[]): readonly Counted[] {
  const batteries = rows.filter((row) => row.kind === 'battery');
  const day = ({ cells }: Row, key: 'chargedOn' | 'testedOn'): number | undefined => {
    const given = cells[key];
    return typeof given === 'object' && 'day' in given ? given.day : undefined;
  };
  return [
    count('codes in another layout (9ZZ97: year before month)', ofMaker(batteries, '9ZZ97')),
    count('code reads two ways (7ZZ91: two lists of month letters)', ofMaker(batteries, '7ZZ91')),
    count(
      'old before it was fitted (over 12 months on the shelf)',
      batteries.filter((row) => onShelfBefore(row) > 12),
    ),
    count('one battery in several rows (moved, lives counted once)', movedBatteries(batteries)),
    count('moved, first installation before records began', firstUnknown(batteries)),
    count('sets over 12 months apart in service', setsApart(batteries)),
    count('sets with an odd number (one place stands empty)', setsShort(batteries)),
    count(
      'test too old to count (over 12 months)',
      batteries.filter((row) => !removed(row) && older(day(row, 'testedOn'))),
    ),
    count(
      'stock not charged for over six months',
      batteries.filter((row) => inStock(row) && uncharged(row, day)),
    ),
    count('temperature must be Fahrenheit (station Fonnlia)', batteries.filter(inFahrenheit)),
    count('condemned by a failed retest, still in service', condemnedInService(tests)),
    count(
      'removal cause not said',
      batteries.filter(({ cells, stint }) => stint?.to !== undefined && saysNothing(cells.cause)),
    ),
  ];
}

const ofMaker = (rows: readonly Row[], maker: string): readonly Row[] =>
  rows.filter(({ battery, cells }) => battery!.maker === maker && typeof cells.code === 'string');
const saysNothing = (cause: unknown): boolean =>
  ['', 'see log', '?', 'exchanged', 'removed', undefined].includes(cause as string);
const older = (day: number | undefined): boolean => day !== undefined && day < AS_OF - TWELVE_MONTHS;
const uncharged = (row: Row, day: (row: Row, key: 'chargedOn') => number | undefined): boolean =>
  (day(row, 'chargedOn') ?? AS_OF) < AS_OF - 6 * DAYS_PER_MONTH;
const inFahrenheit = (row: Row): boolean =>
  row.site!.name === FAHRENHEIT_STATION && tested(row) && typeof row.cells.temperature === 'number';

const movedBatteries = (rows: readonly Row[]): readonly DemoBattery[] => {
  const seen = new Set(rows.map(({ battery }) => battery!));
  return [...seen].filter(
    (battery) => recordedStints(battery).length + (battery.shelf === undefined ? 0 : 1) > 1,
  );
};

const firstUnknown = (rows: readonly Row[]): readonly DemoBattery[] =>
  [...new Set(rows.map(({ battery }) => battery!))].filter(
    (battery) => recordedStints(battery).length > 0 && battery.stints[0] !== recordedStints(battery)[0],
  );

function setsOf(rows: readonly Row[]): readonly (readonly Row[])[] {
  const sets = new Map<string, Row[]>();
  for (const row of rows.filter(
    (candidate) => inService(candidate) && candidate.stint!.vehicle.kind.places > 1,
  )) {
    const { name } = row.stint!.vehicle;
    sets.set(name, [...(sets.get(name) ?? []), row]);
  }
  return [...sets.values()];
}

const setsApart = (rows: readonly Row[]): readonly unknown[] =>
  setsOf(rows).filter((set) => {
    const fitted = set.map(({ stint }) => stint!.from);
    return Math.max(...fitted) - Math.min(...fitted) > TWELVE_MONTHS;
  });
const setsShort = (rows: readonly Row[]): readonly unknown[] =>
  setsOf(rows).filter((set) => set.length % 2 === 1);

const condemnedInService = (tests: readonly DemoTest[]): readonly unknown[] =>
  [...testsByBattery(tests).values()].filter((list) => {
    const { verdict, battery } = list.at(-1)!;
    return verdict === 'Condemned' && battery.shelf === undefined && latestStint(battery)?.to === undefined;
  });

/** What really happened and what will: the truth that only the generator knows. */
export function truthOf(batteries: readonly DemoBattery[]): readonly Counted[] {
  const lives = batteries.filter(
    (battery) => battery.shelf !== undefined || recordedStints(battery).length > 0,
  );
  const stints = lives.flatMap(recordedStints);
  const open = lives.filter(
    (battery) => latestStint(battery) !== undefined && latestStint(battery)!.to === undefined,
  );
  const failed = stints.filter(({ cause }) => cause === 'failed');
  const badLot = lives.filter(({ maker, lot }) => maker === BAD_LOT.maker && lot === BAD_LOT.lot);
  return [
    count('battery lives in the register', lives),
    count('batteries in service at as-of', open),
    count(
      'batteries on shelves at as-of',
      lives.filter(({ shelf }) => shelf !== undefined),
    ),
    count('removed because they failed, on record', failed),
    count(
      'removed for another reason, on record',
      stints.filter(({ to, cause }) => to !== undefined && cause !== 'failed'),
    ),
    { what: 'of those in service, will fail within 12 months', count: failing(open, 12) },
    { what: 'of those in service, will fail within 24 months', count: failing(open, 24) },
    { what: 'of those in service, will fail within 36 months', count: failing(open, 36) },
    count(`batteries of the bad lot ${BAD_LOT.lot} of ${BAD_LOT.maker}`, badLot),
    count(
      'of these removed because they failed',
      badLot.filter((battery) => latestStint(battery)?.cause === 'failed'),
    ),
  ];
}

function failing(open: readonly DemoBattery[], months: number): number {
  return open.filter((battery) => {
    const stint = latestStint(battery)!;
    const { site, lifeFactor } = stint.vehicle;
    const left = battery.lifeMonths * (1 - spentAtAsOf(battery, stint)) * site.lifeFactor * lifeFactor;
    return left <= months;
  }).length;
}

/** A table of each station: rows, removals on record and how long its batteries last against the service. */
export function stationLines(rows: readonly Row[]): readonly string[] {
  return SITES.map((site) => {
    const here = rows.filter((row) => row.kind === 'battery' && row.site === site);
    const failed = here.filter(({ stint }) => stint?.cause === 'failed').length;
    const { name, lifeFactor, wholeSets, coldest, average, heatedStore } = site;
    return `| ${name} | ${here.length} | ${here.filter(inService).length} | ${failed} | ${lifeFactor} | ${Math.round(wholeSets * 100)} % | ${coldest} | ${average} | ${heatedStore ? 'yes' : 'no'} | ${isoDay(watchedFrom(site))} |`;
  });
}
