import type { Day } from '../../src/basics/calendar.ts';
import { dayParts } from '../../src/basics/calendar.ts';
import type { Chance } from './chance.ts';
import { chanceFrom } from './chance.ts';
import type { Cells, DemoCell } from './columns.ts';
import type { DemoBattery, Stint } from './fleet.ts';
import { leastAccepted } from './readings.ts';
import type { Site } from './service.ts';
import { AS_OF, BATTERY_KINDS, RECORD_START, SITES, TAKEN_OVER } from './service.ts';
import type { Stories } from './stories.ts';
import { CAUSES, FITTED_WORDS, GONE_WORDS, NOT_SAID, STORED_WORDS } from './words.ts';

/** A row of sheet Inventory before it is written. */
export type Row = {
  readonly kind: 'battery' | 'heading' | 'subtotal' | 'total' | 'blank';
  readonly cells: Cells;
  readonly battery?: DemoBattery;
  readonly stint?: Stint;
  readonly site?: Site;
  /** The kind of dirt on it; a row gets one only, so that the counts are right. */
  spoiled?: string;
  hidden?: boolean;
};

/** Since when removals at a station are on record. */
export const watchedFrom = (site: Site): Day => site.watchedSince ?? RECORD_START;

/** The stays of a battery that are on record: what was taken off before records began is not in the register. */
export function recordedStints(battery: DemoBattery): readonly Stint[] {
  return battery.stints.filter(
    (stint) => stint.to === undefined || stint.to >= watchedFrom(stint.vehicle.site),
  );
}

/** The last stay of a battery that is on record. */
export function latestStint(battery: DemoBattery): Stint | undefined {
  return recordedStints(battery).at(-1);
}

/** The rows of the batteries, station by station, as a tidy clerk would have written them. */
export function tidyRows(seed: number, batteries: readonly DemoBattery[], stories: Stories): Row[] {
  const chance = chanceFrom(seed);
  const rows = batteries.flatMap((battery) => rowsOf(chance, battery));
  fillReadings(rows, stories);
  return [...rows].sort((a, b) => orderOf(a).localeCompare(orderOf(b), 'en'));
}

function rowsOf(chance: Chance, battery: DemoBattery): Row[] {
  const stays = recordedStints(battery).map((stint) => serviceRow(chance, battery, stint));
  return battery.shelf === undefined ? stays : [...stays, stockRow(chance, battery, battery.shelf)];
}

const orderOf = ({ site, stint, battery }: Row): string => {
  const place = String(SITES.indexOf(site!)).padStart(2, '0');
  if (stint === undefined) return `${place} z ${battery!.kind} ${battery!.serial}`;
  return `${place} a ${stint.vehicle.name} ${stint.place} ${stint.from}`;
};

/** The way in which a station writes its dates. */
function dateFormatOf(site: Site): string {
  return ['dd/mm/yyyy', 'dd/mm/yyyy', 'yyyy-mm-dd', 'd mmm yyyy'][SITES.indexOf(site) % 4]!;
}

/** A date cell as the station writes it. */
export function dateCell(day: Day, site: Site): DemoCell {
  return { day, format: dateFormatOf(site) };
}

function identity(chance: Chance, battery: DemoBattery): Cells {
  const kind = BATTERY_KINDS[battery.kind];
  return {
    serial: battery.serial,
    stockNumber: chance.pick(kind.stockNumbers),
    type: chance.pick<string>(kind.spellings),
    maker: battery.maker,
    code: battery.code,
    rating: kind.rating === 'SAE' ? kind.labelAmps : `${kind.labelAmps} EN`,
    ...(chance.happens(0.8) ? { pricePaid: pricePaid(chance, battery) } : {}),
  };
}

// Prices rose by about 4 % a year; all are invented.
function pricePaid(chance: Chance, battery: DemoBattery): number {
  const { year } = dayParts(battery.made);
  const price = BATTERY_KINDS[battery.kind].price * 1.04 ** (year - 2017) * chance.between(0.97, 1.03);
  return Math.round(price * 20) / 20;
}

function serviceRow(chance: Chance, battery: DemoBattery, stint: Stint): Row {
  const { site, kind, name } = stint.vehicle;
  const { from, to } = stint;
  const onBooks = site.watchedSince !== undefined && from < TAKEN_OVER;
  const cells: Cells = {
    ...identity(chance, battery),
    site: site.name,
    vehicle: name,
    usedIn: kind.name,
    ...(kind.places > 1 ? { set: 'A', place: stint.place } : {}),
    installed: dateCell(from, site),
    ...(onBooks ? { watchedSince: dateCell(TAKEN_OVER, site) } : {}),
    ...(to === undefined ? {} : { removed: dateCell(to, site), cause: causeWords(chance, stint) }),
    status: chance.weighted(to === undefined ? FITTED_WORDS : GONE_WORDS).word,
  };
  return { kind: 'battery', cells, battery, stint, site };
}

// One in twenty removals has no reason beside it, or one that says nothing.
function causeWords(chance: Chance, stint: Stint): string {
  return chance.happens(0.05) ? chance.pick(NOT_SAID) : chance.weighted(CAUSES[stint.cause!]).word;
}

function stockRow(
  chance: Chance,
  battery: DemoBattery,
  shelf: { readonly site: Site; readonly since: Day },
): Row {
  const { site, since } = shelf;
  const chargedOn = Math.max(since, AS_OF - chance.whole(8, 320));
  const cells: Cells = {
    ...identity(chance, battery),
    site: site.name,
    status: chance.weighted(STORED_WORDS).word,
    storagePlace: `${chance.pick(['A', 'B', 'C'])}-${chance.whole(1, 6)}-${chance.whole(1, 4)}`,
    chargedOn: dateCell(chargedOn, site),
    ...(battery.stints.length > 0 ? { remarks: 'used, came back good' } : {}),
  };
  return { kind: 'battery', cells, battery, site };
}

/** This station reads its thermometer in degrees Fahrenheit and doesn't say so. */
export const FAHRENHEIT_STATION = 'Fonnlia';

function fillReadings(rows: readonly Row[], { tests, charges }: Stories): void {
  const last = new Map(rows.map((row) => [row.battery!, row]));
  for (const test of tests) {
    const row = last.get(test.battery)!;
    const { celsius } = test;
    const fahrenheit = row.site!.name === FAHRENHEIT_STATION;
    const shown = celsius === undefined ? undefined : fahrenheit ? Math.round(celsius * 1.8 + 32) : celsius;
    Object.assign(row.cells, {
      restVolts: test.volts,
      temperature: shown,
      reading: test.amps,
      loadVolts: test.loadVolts,
      least: leastAccepted(test.battery, row.stint ?? test.stint, row.site!),
      testedOn: dateCell(test.day, row.site!),
      recharged: test.retest > 0 ? 'y' : 'n',
    });
  }
  for (const { battery, day, site, full } of charges)
    if (full) Object.assign(last.get(battery)!.cells, { chargedOn: dateCell(day, site) });
}
