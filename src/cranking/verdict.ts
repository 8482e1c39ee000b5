import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { chargeBand } from '../electrochemistry/chargeBand.ts';
import { highestFreezingPoint } from '../electrochemistry/highestFreezingPoint.ts';
import { DEAD_CELL_VOLTS } from '../electrochemistry/restReading.ts';
import { restVoltage } from '../electrochemistry/restVoltage.ts';
import type { VerdictWord } from '../service/battery.ts';
import type { BatteryTest, Compared } from './batteryTest.ts';
import { checkedTest, compared } from './batteryTest.ts';

/** At or below this a battery may be frozen [C]: water freezes here, and a discharged battery's acid is near to it. */
export const FROST_CELSIUS = 0;

/** How far a battery must be above the freezing point of its acid to count as not frozen [K]. Own judgement. */
export const FROST_MARGIN_KELVIN = 5;

/** Above this a battery is off the charger and left to cool [C]. Common practice: charging stops at 50 C. */
export const HOT_CELSIUS = 50;

/** Least state of charge at which a cranking test counts. Published with the load test: 75 %, else recharge first. */
export const LEAST_CHARGE_TO_TEST = 0.75;

/** A battery that rests under this after a full charge does not come up [V]. Common practice: a dead cell is 2 V less. */
export const DOES_NOT_COME_UP_VOLTS = 11;

/** Below this a failing reading in amperes is not held against a battery [C]. Common practice: testers are read warm. */
export const COLD_READING_CELSIUS = 0;

/** A failing retest this near to the least is read once more first, as a share of the least. Own judgement. */
export const CLOSE_TO_LEAST = 0.05;

/** What a product such as 0.81 x 1100 may be out in its last place; a reading on a limit stays on its side. */
const ROUNDING = 1e-9;

/** The eleven lines of the verdict; the first that holds decides. */
export type VerdictLine = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11;

/** What a rest voltage tells: charge, whether the battery rested at all, and where its acid may freeze. */
export type RestFacts = {
  /** 0 to 1; undefined where the battery was not at rest. */
  readonly charge?: number;
  /** Rest voltage of this battery when full, at its temperature [V]. */
  readonly fullVolts: number;
  /** Highest temperature at which the acid may begin to freeze [C]; undefined at no frost. */
  readonly freezesAt?: number;
};

/** A verdict with the line that decided it and all that its reason tells. */
export type Judgement = {
  readonly line: VerdictLine;
  readonly word: VerdictWord;
  readonly test: BatteryTest;
  readonly rest?: RestFacts;
  readonly compared?: Compared;
};

/**
 * Verdict on a battery from its cranking reading, the least that is accepted, rest voltage, temperature and which test
 * it is, by eleven ordered lines of which the first that holds decides: damage; may be frozen; hot; not at rest; no rest
 * voltage; charge under 75 %; no reading; reading good enough; cold; first failure; failure again after a full charge.
 * A reading is never corrected for temperature, and a converted rating never belongs here. A temperature that is not
 * given counts as 25 C for the charge and is neither cold nor warm. `least` is the owner's rule, not the label's rating.
 * @param test reading and least (amperes, or both volts under 16 at the end of a load test), rest volts [V] 6 to 16,
 * temperature [C] -40 to 100, retest 0 to 2, construction, damage; what is not known is left out
 * @returns Serviceable, Awaiting charge, Condemned or Not judged
 * @problem missing     when reading, volts and damage are all missing, or a least is needed and missing
 * @problem badInput    when a number is none, the volts are those of a 24 V set, or reading and least differ in unit
 * @problem outOfRange  when a number is outside its limits
 * @source tb9-6140-252-13 fail, full charge, 8 h rest, fail again: condemn; WP 0011
 * @source vehicleServiceTexts charge of 75 % before a load test; recharge and test again before condemning
 * @source tm5-1185 freezing of discharged batteries
 * @source commonPractice 50 C, 11.0 V, readings taken above 0 C
 * @example verdict({ reading: 1150, least: 980, volts: 12.8, celsius: -25 }) // "Serviceable"
 */
export function verdict(test: BatteryTest): Outcome<VerdictWord> {
  return andThen(judge(test), ({ word }) => answer(word));
}

/**
 * The verdict on a battery with the line that decided and the facts behind it; verdict and verdictReason both read it.
 * @param test as verdict
 * @returns line 1 to 11, word, and the facts
 * @problem missing     as verdict
 * @problem badInput    as verdict
 * @problem outOfRange  as verdict
 * @source tb9-6140-252-13 as verdict
 * @example judge({ damage: true }) // {"line":1,"word":"Condemned","test":{"damage":true}}
 */
export function judge(test: BatteryTest): Outcome<Judgement> {
  return andThen(checkedTest(test), () => {
    if (test.damage === true) return decided(1, 'Condemned', { test });
    // A hot battery's voltage is not looked at (charge is answered to 60 C only), so 3 stands before 2; no battery is both.
    if (isHot(test)) return decided(3, 'Not judged', { test });
    return andThen(restFacts(test), (rest) => {
      if (mayBeFrozen(test, rest)) return decided(2, 'Not judged', { test, rest });
      if (rest === undefined) return judgeByReadingAlone(test);
      if (rest.charge === undefined) return decided(4, 'Not judged', { test, rest });
      if (rest.charge < LEAST_CHARGE_TO_TEST - ROUNDING) return judgeDischarged(test, rest);
      if (test.reading === undefined) return decided(7, 'Not judged', { test, rest });
      return judgeReading(test, rest);
    });
  });
}

type Known = Omit<Judgement, 'line' | 'word'>;

function decided(line: VerdictLine, word: VerdictWord, known: Known): Outcome<Judgement> {
  return answer({ line, word, ...known });
}

const isHot = ({ celsius }: BatteryTest): boolean => celsius !== undefined && celsius > HOT_CELSIUS;

const isFrosty = ({ celsius }: BatteryTest): boolean => celsius !== undefined && celsius <= FROST_CELSIUS;

function mayBeFrozen({ celsius }: BatteryTest, rest: RestFacts | undefined): boolean {
  if (celsius === undefined || rest?.freezesAt === undefined) return false;
  return celsius < rest.freezesAt + FROST_MARGIN_KELVIN;
}

// Line 5: the reading is the only thing known, and a failing one may just be discharged.
function judgeByReadingAlone(test: BatteryTest): Outcome<Judgement> {
  return andThen(compared(test.reading!, test.least), (both) =>
    decided(5, isEnough(both) ? 'Serviceable' : 'Not judged', { test, compared: both }),
  );
}

// Line 6.
function judgeDischarged(test: BatteryTest, rest: RestFacts): Outcome<Judgement> {
  const retest = test.retest ?? 0;
  const doesNotComeUp = retest === 2 || (retest === 1 && test.volts! < DOES_NOT_COME_UP_VOLTS);
  return decided(6, doesNotComeUp ? 'Condemned' : 'Awaiting charge', { test, rest });
}

// Lines 8 to 11: charged, at rest and read.
function judgeReading(test: BatteryTest, rest: RestFacts): Outcome<Judgement> {
  return andThen(compared(test.reading!, test.least), (both) => {
    const known = { test, rest, compared: both };
    if (isEnough(both)) return decided(8, 'Serviceable', known);
    if (both.unit === 'A' && test.celsius !== undefined && test.celsius < COLD_READING_CELSIUS)
      return decided(9, 'Not judged', known);
    if ((test.retest ?? 0) === 0) return decided(10, 'Awaiting charge', known);
    return decided(11, 'Condemned', known);
  });
}

const isEnough = ({ reading, least }: Compared): boolean => reading >= least * (1 - ROUNDING);

/**
 * Whether a failing reading is so near to the least that it is worth reading once more: within 5 % of it.
 * @param both reading and least in one unit
 * @returns whether it is near
 * @example isCloseToLeast({ reading: 940, least: 980, unit: 'A' }) // true
 */
export function isCloseToLeast({ reading, least }: Compared): boolean {
  return reading >= least * (1 - CLOSE_TO_LEAST - ROUNDING);
}

function restFacts(test: BatteryTest): Outcome<RestFacts | undefined> {
  const { volts, celsius, construction } = test;
  if (volts === undefined) return answer(undefined);
  return andThen(restVoltage(1, celsius, construction), (fullVolts) => {
    // Under a dead cell's voltage no curve holds: empty, and its acid as good as water.
    if (volts < DEAD_CELL_VOLTS)
      return answer({ charge: 0, fullVolts, ...(isFrosty(test) ? { freezesAt: 0 } : {}) });
    const band = chargeBand(volts, celsius, construction);
    if (!band.ok) return band.problem.because === 'notRested' ? answer({ fullVolts }) : band;
    const { best } = band.value;
    if (!isFrosty(test)) return answer({ charge: best, fullVolts });
    return andThen(highestFreezingPoint(volts, celsius, construction), (freezesAt) =>
      answer({ charge: best, fullVolts, freezesAt }),
    );
  });
}
