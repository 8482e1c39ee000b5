import type { Day } from '../basics/calendar.ts';
import { addMonths, isoDay } from '../basics/calendar.ts';
import type { Battery, VerdictWord } from '../service/battery.ts';
import { plainConstruction, SET_MONTHS_APART, setNamer } from './setName.ts';

/** A battery of the same set. */
export type SetMate = {
  readonly row: number;
  readonly serial: string;
  readonly place?: string;
  readonly type: string;
  readonly construction: string;
  readonly made?: Day;
  /** Age in service [months]. */
  readonly months?: number;
  readonly testedOn?: Day;
  readonly restVolts?: number;
  readonly reading?: number;
  readonly verdict?: VerdictWord;
};

/** The set of a battery, without itself. */
export type SetMates = {
  /** Such as "set A of NF-12"; empty where the battery is in no set. */
  readonly name: string;
  readonly mates: readonly SetMate[];
  /** What to do with the set, in sentences; empty where nothing is to be done. */
  readonly advice: readonly string[];
};

/** A used battery suits a set when its reading is this near to those of its mates, as a share. Common practice. */
const LIKE_READING = 0.1;

/**
 * The batteries that share a set with one in service, each with made date, months and last test; and, when that one is
 * condemned, what to do with the set. Without sets in the sheet the batteries of a vehicle are one set.
 * @param battery    the one at the bench
 * @param batteries  all of the inventory
 * @param word       its verdict at the bench, where it has one
 * @returns name of the set, mates by age, advice
 * @source commonPractice renew the whole set, or fit one of like age and reading; never mix AGM and flooded
 */
export function setMates(
  battery: Battery,
  batteries: readonly Battery[],
  word: VerdictWord | undefined = battery.verdict,
): SetMates {
  const nameOf = setNamer(batteries.some(({ set }) => set !== ''));
  const name = battery.whereabouts === 'inService' ? nameOf(battery) : '';
  if (name === '') return { name, mates: [], advice: [] };
  const others = batteries.filter(
    (other) => other.row !== battery.row && other.whereabouts === 'inService' && nameOf(other) === name,
  );
  const mates = others.map(mateOf).sort((a, b) => (b.months ?? -1) - (a.months ?? -1) || a.row - b.row);
  const mixed = mixedAdvice([battery, ...others]);
  return { name, mates, advice: [...mixed, ...(word === 'Condemned' ? renewalAdvice(battery, mates) : [])] };
}

function mateOf(battery: Battery): SetMate {
  const { row, serial, place, type, made, ageMonths, readings, verdict } = battery;
  return {
    ...{ row, serial, place, type, construction: plainConstruction(battery), made, months: ageMonths },
    ...{ testedOn: readings?.testedOn, restVolts: readings?.restVolts, reading: readings?.reading, verdict },
  };
}

function mixedAdvice(set: readonly Battery[]): string[] {
  const known = set.filter(({ constructionAssumed }) => constructionAssumed !== true);
  const kinds = [...new Set(known.map(plainConstruction))];
  if (kinds.length < 2) return [];
  return [
    `This set mixes ${kinds.join(' and ')}: they ask for different charging. Make it one construction.`,
  ];
}

function renewalAdvice(battery: Battery, mates: readonly SetMate[]): string[] {
  if (mates.length === 0) return ['No mate of it is on record: replace it by itself.'];
  const construction = plainConstruction(battery);
  const never = construction === 'flooded' ? 'Never fit an AGM one to it.' : `Never fit a flooded one to it.`;
  return [
    `Renew the whole set and test ${mates.length === 1 ? 'its mate' : `its ${mates.length} mates`} for stock: a new one among old ones is worn down by them.`,
    `Or fit a used one of like age and reading${likeness(mates)}. ${never}`,
  ];
}

function likeness(mates: readonly SetMate[]): string {
  const made = mates.flatMap((mate) => (mate.made === undefined ? [] : [mate.made]));
  const readings = mates.flatMap(({ reading = 0 }) => (reading >= 16 ? [reading] : []));
  const parts = [...madeBetween(made), ...readBetween(readings)];
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

function madeBetween(made: readonly Day[]): string[] {
  if (made.length === 0) return [];
  const from = addMonths(Math.max(...made), -SET_MONTHS_APART);
  const to = addMonths(Math.min(...made), SET_MONTHS_APART);
  return from > to ? [] : [`made ${isoDay(from).slice(0, 7)} to ${isoDay(to).slice(0, 7)}`];
}

function readBetween(readings: readonly number[]): string[] {
  if (readings.length === 0) return [];
  const from = Math.ceil(Math.max(...readings) * (1 - LIKE_READING));
  const to = Math.floor(Math.min(...readings) * (1 + LIKE_READING));
  return from > to ? [] : [`reading ${from} to ${to} A`];
}
