import type { Day } from '../../src/basics/calendar.ts';
import { dayParts } from '../../src/basics/calendar.ts';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import type { Chance } from './chance.ts';
import type { DemoBattery, Stint } from './fleet.ts';
import type { Site } from './service.ts';
import { BATTERY_KINDS } from './service.ts';

/** What a tester showed on one day. */
export type Reading = {
  readonly volts: number;
  readonly celsius?: number;
  readonly amps?: number;
  readonly loadVolts?: number;
  readonly least: number;
};

/** This station measures volts at the end of a load test; the others read cranking amperes. */
const LOAD_TEST_STATION = 'Skarnhavn';
const LEAST_LOAD_VOLTS = 9.6;

/** The least reading that crews accept in that vehicle; from a shelf 90 % of the label is asked. */
export function leastAccepted(battery: DemoBattery, stint: Stint | undefined, site: Site): number {
  if (site.name === LOAD_TEST_STATION) return LEAST_LOAD_VOLTS;
  const share = stint?.vehicle.kind.acceptedShare ?? 0.9;
  return Math.round((BATTERY_KINDS[battery.kind].labelAmps * share) / 5) * 5;
}

/** Share of its life that a battery has spent on a day of its stay in a vehicle. */
export function lifeSpent(battery: DemoBattery, stint: Stint | undefined, day: Day): number {
  let spent = 0;
  for (const stay of battery.stints) {
    if (stint === undefined || stay.from > stint.from) continue;
    const until = stay === stint ? day : stay.to!;
    const { site, lifeFactor } = stay.vehicle;
    spent += (until - stay.from) / DAYS_PER_MONTH / (site.lifeFactor * lifeFactor);
  }
  return Math.min(1, spent / battery.lifeMonths);
}

// What is left of the label's cranking amperes falls slowly at first and by about a third at the end of a life.
const ratioLeft = (spent: number): number => 1.06 - 0.34 * spent ** 2;

/** Reads a battery of a charge on a day; the reading declines with the share of life spent. */
export function readBattery(
  chance: Chance,
  battery: DemoBattery,
  stint: Stint | undefined,
  site: Site,
  day: Day,
  charge: number,
): Reading {
  const celsius = batteryCelsius(chance, site, day);
  const given = chance.happens(0.9) ? celsius : undefined;
  const least = leastAccepted(battery, stint, site);
  const ratio = chance.bell(ratioLeft(lifeSpent(battery, stint, day)), 0.02) * weakWhenLow(charge);
  const amps = Math.round(BATTERY_KINDS[battery.kind].labelAmps * ratio);
  const share = stint?.vehicle.kind.acceptedShare ?? 0.9;
  const reading =
    least === LEAST_LOAD_VOLTS
      ? { loadVolts: round(LEAST_LOAD_VOLTS + (ratio - share) * 4, 1) }
      : { amps: Math.max(0, amps) };
  const volts = restVolts(chance, battery, charge, celsius);
  return { volts, ...(given === undefined ? {} : { celsius: given }), ...reading, least };
}

const weakWhenLow = (charge: number): number => (charge >= 0.75 ? 1 : 0.55 + 0.6 * charge);

/** Rest volts of a charge at a temperature, with a meter's scatter. */
export function restVolts(chance: Chance, battery: DemoBattery, charge: number, celsius: number): number {
  const { construction } = BATTERY_KINDS[battery.kind];
  const rest = restVoltage(charge, celsius, construction);
  if (!rest.ok) throw new Error('the demonstration asked for a rest voltage that there is not');
  return round(chance.bell(rest.value, 0.012), 2);
}

// Tests are made in the workshop where it is heated, else in the yard.
function batteryCelsius(chance: Chance, site: Site, day: Day): number {
  if (site.heatedStore && chance.happens(0.85)) return Math.round(chance.bell(15, 3));
  const season = Math.cos(((dayParts(day).month - 0.5) / 12) * 2 * Math.PI);
  const span = (site.average - site.coldest) / 2.2;
  return Math.round(Math.max(site.coldest, chance.bell(site.average - span * season, 3)));
}

/** A number cut to some digits after the point. */
export function round(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}
