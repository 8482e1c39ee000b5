import { READINGS_ARE_AMPS_FROM } from '../cranking/batteryTest.ts';
import type { Battery } from '../service/battery.ts';
import { calendarMonths } from '../service/monthsInService.ts';

/** How far the batteries of one set may differ. */
export type SetLimits = {
  /** Months between the made dates. */
  readonly setMonths: number;
  /** Difference of the readings as a share of the highest. */
  readonly setReading: number;
  /** Difference of the rest voltages [V]. */
  readonly setVolts: number;
};

/** Two or four batteries that can be issued together, the oldest first, and how far they differ. */
export type StoreSet = {
  readonly batteries: readonly Battery[];
  readonly months: number;
  readonly reading: number;
  readonly volts: number;
};

/** What a difference of readings or volts may be out in its last place; what lies on a limit is inside. */
const ROUNDING = 1e-9;

/**
 * Sets to issue from batteries fit for issue: one site, one type and construction, made, read and resting alike. The
 * oldest is taken first, with as many as fit it up to four; three make a pair. Each battery stands in one set.
 * @param issuable  batteries fit for issue, the oldest first
 * @param limits    how far they may differ
 * @returns fours and pairs in the order of their oldest battery
 */
export function storeSets(issuable: readonly Battery[], limits: SetLimits): readonly StoreSet[] {
  const groups = new Map<string, Battery[]>();
  for (const battery of issuable.filter(isComparable)) {
    const key = likeness(battery);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [battery]);
    else group.push(battery);
  }
  return [...groups.values()]
    .flatMap((group) => setsOf(group, limits))
    .sort(
      (a, b) => a.batteries[0]!.made! - b.batteries[0]!.made! || a.batteries[0]!.row - b.batteries[0]!.row,
    );
}

const isComparable = ({ made, type, stockNumber, readings }: Battery): boolean =>
  made !== undefined &&
  `${type}${stockNumber}` !== '' &&
  readings?.reading !== undefined &&
  readings.restVolts !== undefined;

/** Tells whether a reading is volts at the end of a load test, not amperes. */
export const readsVolts = (reading: number): boolean => reading < READINGS_ARE_AMPS_FROM;

// "6T AGM" and "6T-AGM" are one type; without a type the stock number tells it.
function likeness({ site, type, stockNumber, construction, readings }: Battery): string {
  const unit = readsVolts(readings!.reading!) ? 'V' : 'A';
  const kind = type.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');
  return [site, kind === '' ? stockNumber : kind, construction, unit].join('\n');
}

function setsOf(group: readonly Battery[], limits: SetLimits): StoreSet[] {
  const sets: StoreSet[] = [];
  let left = group;
  while (left.length > 1) {
    const [first, ...others] = left;
    const found = matesOf(first!, others, limits);
    const set = found.length === 4 ? found : found.slice(0, 2);
    if (set.length === 2 || set.length === 4) sets.push(storeSet(set));
    const taken = new Set(set);
    left = others.filter((battery) => !taken.has(battery));
  }
  return sets;
}

// The oldest come first, so that the first and the last are furthest apart.
function matesOf(first: Battery, others: readonly Battery[], limits: SetLimits): Battery[] {
  const set = [first];
  for (const battery of others) {
    if (set.length === 4 || calendarMonths(first.made!, battery.made!) > limits.setMonths) break;
    if (isAlike(storeSet([...set, battery]), limits)) set.push(battery);
  }
  return set;
}

const isAlike = ({ reading, volts }: StoreSet, { setReading, setVolts }: SetLimits): boolean =>
  reading <= setReading + ROUNDING && volts <= setVolts + ROUNDING;

function storeSet(batteries: readonly Battery[]): StoreSet {
  const readings = batteries.map((battery) => battery.readings!.reading!);
  return {
    batteries,
    months: calendarMonths(batteries[0]!.made!, batteries.at(-1)!.made!),
    reading: spread(readings) / Math.max(...readings),
    volts: spread(batteries.map((battery) => battery.readings!.restVolts!)),
  };
}

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
