import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer, problem } from '../basics/outcome.ts';
import type { BenchAnswer } from './benchAnswer.ts';
import { answerByLook, answerByTest, answerFrozen, answerInSet, answerNotRested } from './benchAnswer.ts';
import type { BenchEntry, BenchQuestion } from './benchEntry.ts';
import { asksAboutFrost, testOf } from './benchEntry.ts';
import { checkedTest, nothingGiven } from './batteryTest.ts';
import type { Caution } from './cautions.ts';

/** Where the bench stands: what to answer next, or the answer; with the cautions of this step. */
export type BenchTest = {
  readonly stage: 'look' | 'alone' | 'readings' | 'frost' | 'answer';
  /** Questions of this stage that are still open. */
  readonly asks: readonly BenchQuestion[];
  readonly cautions: readonly Caution[];
  /** Whether frost has to be asked about, as far as the readings tell; it may be asked before its stage. */
  readonly asksFrost: boolean;
  readonly answer?: BenchAnswer;
};

/** A rest voltage counts after so many hours. Published: 3 h at least, 8 h better. */
export const LEAST_HOURS_AT_REST = 3;

/** No battery rests longer, ten years; what is more is a slip of the pen [h]. Own judgement. */
export const MOST_HOURS_AT_REST = 87_600;

/**
 * The order of the work at one battery, from what was answered and read so far: look, alone, readings, frost, answer. Any
 * damage ends it as Condemned and any heat as Not judged, before anything is connected. A battery that is not alone, may
 * be frozen, or rested under 3 h is Not judged, whatever was read. Frost is asked about when the rest voltage is under
 * 12.2 V, when no temperature is given, and at 0 C or less without a rest voltage. A retest counts as one only with a full
 * charge on record after the failing test. Everything else is the verdict's.
 * @param entry what was answered and read
 * @returns the stage, its open questions and cautions, and the answer where it is reached
 * @problem missing     as verdict
 * @problem badInput    as verdict
 * @problem outOfRange  as verdict, or when the hours at rest are under 0 or over ten years
 * @source tb9-6140-252-13 as verdict
 * @source tm9-6115-730-24 rest of 3 h at least
 * @source commonPractice look first, read alone, never charge or test what is frozen
 * @example benchTest({ look: { case: 'no', posts: 'no', heat: 'no' } }).value.stage // "alone"
 */
export function benchTest(entry: BenchEntry): Outcome<BenchTest> {
  const { look, alone, frost } = entry;
  if ([look.case, look.posts, look.heat].includes('yes')) return done(answerByLook(entry), entry);
  const open = (['case', 'posts', 'heat'] as const).filter((part) => look[part] === undefined);
  if (open.length > 0) return asking('look', open, ['acid'], entry);
  if (alone === undefined)
    return asking('alone', ['alone'], ['groundCable', 'shortCircuit', 'lifting'], entry);
  if (alone === 'no') return done(answerInSet(), entry);
  // Frost once said ends it, whatever is still unread.
  if (frost === 'yes') return done(answerFrozen(), entry);
  return byReadings(entry);
}

function byReadings(entry: BenchEntry): Outcome<BenchTest> {
  const test = testOf(entry);
  if (nothingGiven(test)) return asking('readings', [], ['loadTest'], entry);
  return andThen(checkedTest(test), () => {
    if (asksAboutFrost(entry) && entry.frost === undefined)
      return asking('frost', ['frost'], ['frozen'], entry);
    const { hoursAtRest } = entry;
    const wrong = hoursProblem(hoursAtRest);
    if (wrong !== undefined) return wrong;
    if (hoursAtRest !== undefined && !(hoursAtRest >= LEAST_HOURS_AT_REST))
      return done(answerNotRested(hoursAtRest), entry);
    return andThen(answerByTest(test, entry), (found) => done(found, entry));
  });
}

type Refused = Extract<Outcome<never>, { readonly ok: false }>;

function hoursProblem(hours: number | undefined): Refused | undefined {
  if (hours === undefined || (hours >= 0 && hours <= MOST_HOURS_AT_REST)) return undefined;
  const limits = [0, MOST_HOURS_AT_REST] as const;
  return problem('outOfRange', 'outOfLimits', 'hours at rest', hours, { limits });
}

function asking(
  stage: BenchTest['stage'],
  asks: readonly BenchQuestion[],
  cautions: readonly Caution[],
  entry: BenchEntry,
): Outcome<BenchTest> {
  return answer({ stage, asks, cautions, asksFrost: asksAboutFrost(entry) });
}

function done(found: BenchAnswer, entry: BenchEntry): Outcome<BenchTest> {
  const { cautions } = found;
  return answer({ stage: 'answer', asks: [], cautions, asksFrost: asksAboutFrost(entry), answer: found });
}
