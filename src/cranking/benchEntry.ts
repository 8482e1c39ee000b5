import type { Day } from '../basics/calendar.ts';
import type { Construction } from '../service/battery.ts';
import type { BatteryTest, Retest } from './batteryTest.ts';
import { leastAsked } from './leastAsked.ts';
import { FROST_CELSIUS, HOT_CELSIUS } from './verdict.ts';

/** An answer to a question of the bench. */
export type YesNo = 'yes' | 'no';

/** The questions of the bench, in the order in which they are asked. */
export const BENCH_QUESTIONS = {
  case: 'Is the case cracked, bulged, leaking or burnt?',
  posts: 'Is a post loose or melted?',
  heat: 'Is it hot, hissing or smelling of rotten eggs?',
  alone: 'Is it alone: disconnected from its set, its charger and every load?',
  frost: 'Has it been in frost?',
} as const;

export type BenchQuestion = keyof typeof BENCH_QUESTIONS;

/** What has been answered and read at one battery so far; whatever is left out is not answered yet. */
export type BenchEntry = {
  readonly look: { readonly case?: YesNo; readonly posts?: YesNo; readonly heat?: YesNo };
  readonly alone?: YesNo;
  readonly frost?: YesNo;
  /** Rest voltage [V], hours that it rested, battery temperature [C]. */
  readonly restVolts?: number;
  readonly hoursAtRest?: number;
  readonly celsius?: number;
  /** Cranking reading [A], volts at the end of a load test, and the least accepted in the unit of the reading. */
  readonly reading?: number;
  readonly loadVolts?: number;
  readonly least?: number;
  /** Which test it is said to be; counts only with a full charge after the failing test. */
  readonly retest?: Retest;
  /** Last full charge on record, and the failing test before this one. */
  readonly chargedOn?: Day;
  readonly testedOn?: Day;
  readonly construction?: Construction;
  /** Coldest temperature of the battery's place [C]. */
  readonly coldestOfPlace?: number;
};

/** Under this rest voltage acid is weak enough to freeze in a common winter, so frost is asked about [V]. Common practice. */
export const ASK_FROST_UNDER_VOLTS = 12.2;

/**
 * The test that a bench entry amounts to, as the verdict takes it.
 * @param entry what was answered and read
 * @returns reading, least, volts, temperature, which test, construction
 * @example testOf({ look: {}, reading: 900, least: 980, retest: 1 }).retest // 0
 */
export function testOf(entry: BenchEntry): BatteryTest {
  const { restVolts, celsius, construction } = entry;
  const asked = leastAsked(entry);
  const least = asked.least ?? entry.least;
  const retest = countsAsRetest(entry) ? entry.retest : 0;
  return { reading: asked.reading, least, volts: restVolts, celsius, retest, construction };
}

/**
 * Whether a retest that is said to be one counts: a full charge is on record, after the failing test where that is.
 * @param entry what was answered and read
 * @returns whether it counts
 * @example countsAsRetest({ look: {}, retest: 1, testedOn: 46170, chargedOn: 46172 }) // true
 */
export function countsAsRetest({ retest = 0, chargedOn, testedOn }: BenchEntry): boolean {
  return retest > 0 && chargedOn !== undefined && (testedOn === undefined || chargedOn > testedOn);
}

/**
 * Whether frost has to be asked about, as far as the readings tell: under 12.2 V, without a temperature, and at 0 C or
 * less without a rest voltage. A hot battery is no frozen one.
 * @param entry what was answered and read
 * @returns whether to ask
 * @source commonPractice 12.2 V
 * @example asksAboutFrost({ look: {}, restVolts: 12.7, celsius: -25 }) // false
 */
export function asksAboutFrost({ restVolts, celsius }: BenchEntry): boolean {
  if (celsius === undefined) return true;
  if (celsius > HOT_CELSIUS) return false;
  return restVolts === undefined ? celsius <= FROST_CELSIUS : restVolts < ASK_FROST_UNDER_VOLTS;
}

/**
 * The damage that the look found, in words; empty where it found none.
 * @param look answers to the questions about case and posts
 * @returns case, posts, both, or nothing
 * @example damageSeen({ case: 'yes', posts: 'yes' }) // "case, posts"
 */
export function damageSeen(look: BenchEntry['look']): string {
  return (['case', 'posts'] as const).filter((part) => look[part] === 'yes').join(', ');
}
