import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { acidsOf } from '../electrochemistry/constructions.ts';
import { batteryVolts, COLDEST_CELSIUS } from '../electrochemistry/restReading.ts';
import type { Construction } from '../service/battery.ts';

/**
 * Which test of a battery a reading belongs to: 0 the first; 1 taken after a full charge and rest that followed a
 * failing test; 2 after a second such charge. That a battery was charged does not make a retest.
 */
export type Retest = 0 | 1 | 2;

/** What was seen and read at one battery; whatever is left out is not known. */
export type BatteryTest = {
  /** Cranking amperes as the tester shows them, or volts (under 16) at the end of a load test. */
  readonly reading?: number;
  /** The least reading that the owner accepts for this use, in the unit of the reading. */
  readonly least?: number;
  /** Rest voltage [V], 6 to 16. */
  readonly volts?: number;
  /** Battery temperature [C], -40 to 100. */
  readonly celsius?: number;
  readonly retest?: Retest;
  /** AGM where it is left out. */
  readonly construction?: Construction;
  /** Cracked, bulged, leaking or burnt case, loose or melted post. */
  readonly damage?: boolean;
};

/** The unit of a cranking reading: amperes, or volts at the end of a load test. */
export type ReadingUnit = 'A' | 'V';

/** A reading beside the least that is accepted, both in one unit. */
export type Compared = { readonly reading: number; readonly least: number; readonly unit: ReadingUnit };

/** Readings under this are volts at the end of a load test: no 12 V battery shows more. Common practice. */
export const READINGS_ARE_AMPS_FROM = 16;

/** No tester shows more [A]. Own judgement. */
const MOST_READING = 10_000;

/** A battery may be hotter than the 60 C to which charge is answered and must still get its warning; water boils here [C]. */
export const HOTTEST_CELSIUS = 100;

/**
 * A test whose every entry can be one: the test itself where each number lies within its limits.
 * @param test what was seen and read
 * @returns the same
 * @problem missing     when reading, volts and damage are all missing
 * @problem badInput    when a number is none, or the volts are those of a whole 24 V set
 * @problem outOfRange  when reading, least, volts, temperature or the construction's volts are outside their limits
 * @example checkedTest({ reading: 1150, least: 980 }) // {"reading":1150,"least":980}
 */
export function checkedTest(test: BatteryTest): Outcome<BatteryTest> {
  const { reading, volts, celsius } = test;
  if (nothingGiven(test)) return problem('missing', 'nothingToJudge', 'reading');
  return (
    readingProblem(reading, 'reading') ??
    readingProblem(test.least, 'least') ??
    refusal(volts === undefined ? undefined : batteryVolts(volts)) ??
    refusal(celsius === undefined ? undefined : testCelsius(celsius)) ??
    refusal(test.construction === undefined ? undefined : acidsOf(test.construction)) ??
    answer(test)
  );
}

type Refused = Extract<Outcome<never>, { readonly ok: false }>;

function refusal(outcome: Outcome<unknown> | undefined): Refused | undefined {
  return outcome === undefined || outcome.ok ? undefined : outcome;
}

function readingProblem(amount: number | undefined, argument: 'reading' | 'least'): Refused | undefined {
  if (amount === undefined) return undefined;
  if (!Number.isFinite(amount)) return problem('badInput', 'notANumber', argument, amount);
  const tooSmall = argument === 'least' ? amount <= 0 : amount < 0;
  if (!tooSmall && amount <= MOST_READING) return undefined;
  const from = argument === 'least' ? 'more than 0' : 0;
  return problem('outOfRange', 'outOfLimits', argument, amount, { limits: [from, MOST_READING] });
}

function testCelsius(celsius: number): Outcome<number> {
  if (!Number.isFinite(celsius)) return problem('badInput', 'notANumber', 'temperature', celsius);
  if (celsius >= COLDEST_CELSIUS && celsius <= HOTTEST_CELSIUS) return answer(celsius);
  return problem('outOfRange', 'temperatureLimits', 'temperature', Number(celsius.toFixed(1)), {
    limits: [COLDEST_CELSIUS, HOTTEST_CELSIUS],
  });
}

/**
 * A reading and the least accepted, when both are in one unit: amperes, or, both under 16, volts at the end of a load
 * test. A reading of 0 has the unit of the least.
 * @param reading cranking amperes, or volts at the end of a load test, 0 or more
 * @param least the least that is accepted, in the same unit
 * @returns reading, least and their unit
 * @problem missing   when least is missing
 * @problem badInput  when one is under 16 and the other is not
 * @example compared(9.4, 9.3) // {"reading":9.4,"least":9.3,"unit":"V"}
 */
export function compared(reading: number, least: number | undefined): Outcome<Compared> {
  if (least === undefined) return problem('missing', 'leastMissing', 'least');
  const unit = unitOf(least);
  if (reading !== 0 && unitOf(reading) !== unit)
    return problem('badInput', 'unitsMixed', 'reading', reading, { more: { least } });
  return answer({ reading, least, unit });
}

const unitOf = (amount: number): ReadingUnit => (amount < READINGS_ARE_AMPS_FROM ? 'V' : 'A');

const RETESTS: ReadonlyMap<unknown, Retest> = new Map<unknown, Retest>([
  ['', 0],
  ['0', 0],
  ['FALSE', 0],
  ['NO', 0],
  ['1', 1],
  ['TRUE', 1],
  ['YES', 1],
  ['2', 2],
]);

/**
 * Which test of a battery an entry names: TRUE or FALSE, 0, 1 or 2, yes or no in any case; nothing is the first test.
 * @param given what a cell holds
 * @returns 0, 1 or 2
 * @problem badInput  when it is anything else
 * @example retestFrom('Yes') // 1
 */
export function retestFrom(given: unknown): Outcome<Retest> {
  const known = RETESTS.get(wordOf(given));
  if (known !== undefined) return answer(known);
  return problem('badInput', 'notAWord', 'retest', given, {
    more: {
      allowed: 'FALSE or 0 (first test), TRUE or 1 (retest after a full charge), 2 (second retest), yes, no',
    },
  });
}

const NO_DAMAGE: ReadonlySet<string> = new Set([
  '',
  'NO',
  'NONE',
  'N',
  'NIL',
  'OK',
  'GOOD',
  '-',
  '0',
  'FALSE',
  'N/A',
]);

/**
 * Whether an entry names damage: TRUE, a number other than 0, or any text but those that say none (no, none, n, nil,
 * ok, good, -, 0, FALSE, n/a in any case).
 * @param given what a cell holds
 * @returns whether damage is named
 * @example damageFrom('case bulged') // true
 */
export function damageFrom(given: unknown): boolean {
  return !NO_DAMAGE.has(wordOf(given));
}

function wordOf(given: unknown): string {
  return given === null || given === undefined ? '' : String(given).trim().toUpperCase();
}

/**
 * Whether a test holds nothing that can be judged: no reading, no rest voltage, no damage.
 * @param test what was seen and read
 * @returns whether it holds nothing
 * @example nothingGiven({ least: 980, celsius: 5 }) // true
 */
export function nothingGiven(test: BatteryTest): boolean {
  return test.reading === undefined && test.volts === undefined && test.damage !== true;
}
