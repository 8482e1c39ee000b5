import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import type { ChargeBand } from '../electrochemistry/chargeBand.ts';
import { chargeBand } from '../electrochemistry/chargeBand.ts';
import { highestFreezingPoint } from '../electrochemistry/highestFreezingPoint.ts';
import type { VerdictWord } from '../service/battery.ts';
import type { BatteryTest } from './batteryTest.ts';
import type { BenchEntry } from './benchEntry.ts';
import { countsAsRetest, damageSeen } from './benchEntry.ts';
import type { Caution } from './cautions.ts';
import { CHARGING_CAUTIONS } from './cautions.ts';
import type { Judgement } from './verdict.ts';
import { FROST_CELSIUS, FROST_MARGIN_KELVIN, judge } from './verdict.ts';
import { reasonAndNextStep, TEMPERATURE_NOT_GIVEN } from './verdictReason.ts';

/** What the bench answers about one battery. */
export type BenchAnswer = {
  readonly word: VerdictWord;
  /** Why, and what to do next; no full stop at the end. */
  readonly reason: string;
  readonly nextStep: string;
  readonly cautions: readonly Caution[];
  /** State of charge with its band, where the rest voltage counts. */
  readonly charge?: ChargeBand;
  /** Highest temperature at which its acid may begin to freeze [C]. */
  readonly freezesAt?: number;
  /** That temperature against the coldest of its place, in words, where the place's is known. */
  readonly frostAtPlace?: string;
  readonly mayBeCharged: boolean;
  /** Whether what was read counts: only then do the readings go on record. */
  readonly readingsCount: boolean;
  readonly notes: readonly string[];
};

const NOTHING_COUNTS = { mayBeCharged: false, readingsCount: false, notes: [] } as const;

/**
 * The answer where the look ends it: damage is Condemned; heat without damage is Not judged.
 * @param entry what was answered
 * @example answerByLook({ look: { heat: 'yes' } }).word // "Not judged"
 */
export function answerByLook({ look }: BenchEntry): BenchAnswer {
  const hot: readonly Caution[] = look.heat === 'yes' ? ['hot'] : [];
  const seen = damageSeen(look);
  if (seen === '')
    return {
      ...NOTHING_COUNTS,
      word: 'Not judged',
      reason: 'It is hot, hissing or smells of rotten eggs',
      nextStep:
        'Charger off before the clamps come off, stand clear, air the room and let it cool in open air; hot without reason means a fault inside, so do not charge it again then',
      cautions: [...hot, 'acid', 'localRules'],
    };
  const judged = reasonAndNextStep({ line: 1, word: 'Condemned', test: { damage: true } });
  return {
    ...NOTHING_COUNTS,
    word: 'Condemned',
    reason: `${judged.reason}: ${seen}`,
    nextStep: `${judged.nextStep}; take it out of use and turn it in as condemned`,
    cautions: [...hot, 'acid', 'shipping', 'lifting', 'turnIn', 'localRules'],
  };
}

/** The answer for a battery that is still connected: what is read there is its set, its charger or a load with it. */
export function answerInSet(): BenchAnswer {
  return {
    ...NOTHING_COUNTS,
    word: 'Not judged',
    reason: 'It is not alone: what is read there is its set, its charger or a load with it',
    nextStep: 'Disconnect it, ground cable first, rest it 3 h at least, 8 h better, and read it alone',
    cautions: ['groundCable', 'shortCircuit', 'lifting', 'localRules'],
  };
}

/** The answer for a battery that has been in frost and may be frozen. */
export function answerFrozen(): BenchAnswer {
  return {
    ...NOTHING_COUNTS,
    word: 'Not judged',
    reason: 'It has been in frost and may be frozen inside',
    nextStep:
      'Do not charge, jump or test it; thaw it slowly indoors without direct heat, then look for cracks and start again',
    cautions: ['frozen', 'lifting', 'localRules'],
  };
}

/** The answer where the battery did not rest long enough for its voltage to tell anything. */
export function answerNotRested(hours: number): BenchAnswer {
  return {
    ...NOTHING_COUNTS,
    word: 'Not judged',
    reason: `It rested ${Number(hours.toFixed(1))} h only: its voltage does not tell its charge yet`,
    nextStep: 'Leave it disconnected, 3 h at least, 8 h better, and read again',
    cautions: ['localRules'],
  };
}

/**
 * The answer from what was read at a battery that is alone, whole, not frozen and at rest.
 * @param test what the readings amount to
 * @param entry what was answered and read
 * @problem missing     as verdict
 * @problem badInput    as verdict
 * @problem outOfRange  as verdict
 */
export function answerByTest(test: BatteryTest, entry: BenchEntry): Outcome<BenchAnswer> {
  return andThen(judge(test), (judgement) => {
    const { reason, nextStep } = reasonAndNextStep(judgement);
    const facts = judgement.line === 3 || judgement.line === 4 ? {} : acidFacts(test, entry);
    const given = test.celsius === undefined ? `; ${TEMPERATURE_NOT_GIVEN}` : '';
    return answer({
      word: judgement.word,
      reason: `${reason}${given}`,
      nextStep,
      cautions: cautionsOf(judgement),
      ...facts,
      mayBeCharged: mayBeCharged(judgement),
      readingsCount: true,
      notes: notesOf(entry),
    });
  });
}

// May be frozen, hot, on charge: none of these is put on a charger; a condemned one has no use for it.
const mayBeCharged = ({ line, word }: Judgement): boolean => line > 4 && word !== 'Condemned';

function cautionsOf({ line, word }: Judgement): readonly Caution[] {
  if (line === 2) return ['frozen', 'lifting', 'localRules'];
  if (line === 3) return ['hot', 'acid', 'localRules'];
  if (line === 7 || line === 9) return ['loadTest', 'localRules'];
  if (word === 'Condemned') return ['lifting', 'turnIn', 'localRules'];
  if (word === 'Awaiting charge') return [...CHARGING_CAUTIONS, 'localRules'];
  return ['localRules'];
}

type AcidFacts = Pick<BenchAnswer, 'charge' | 'freezesAt' | 'frostAtPlace'>;

function acidFacts({ volts, celsius, construction }: BatteryTest, { coldestOfPlace }: BenchEntry): AcidFacts {
  if (volts === undefined) return {};
  const band = chargeBand(volts, celsius, construction);
  const point = highestFreezingPoint(volts, celsius, construction);
  const freezesAt = point.ok ? point.value : undefined;
  return {
    ...(band.ok ? { charge: band.value } : {}),
    ...(freezesAt === undefined ? {} : { freezesAt, ...atPlace(freezesAt, coldestOfPlace) }),
  };
}

function atPlace(freezesAt: number, coldest: number | undefined): Pick<BenchAnswer, 'frostAtPlace'> {
  if (coldest === undefined) return {};
  const may = coldest < freezesAt + FROST_MARGIN_KELVIN;
  const words = may ? 'it may freeze there: charge it or keep it warm' : 'safe from frost there';
  return {
    frostAtPlace: `Freezes from about ${Math.round(freezesAt)} C; coldest at its place ${coldest} C: ${words}`,
  };
}

function notesOf(entry: BenchEntry): string[] {
  const notes: string[] = [];
  if ((entry.retest ?? 0) > 0 && !countsAsRetest(entry))
    notes.push(
      'Counted as a first test: no full charge after the failing test is on record; record the charge first',
    );
  if (entry.restVolts !== undefined && entry.hoursAtRest === undefined)
    notes.push('Hours at rest not said: its voltage counts only after 3 h, better 8 h');
  if (entry.reading !== undefined && entry.loadVolts !== undefined)
    notes.push(
      `Judged by the reading in amperes; the load-test volts, ${entry.loadVolts} V, go on record and are not judged`,
    );
  if (entry.restVolts === undefined && entry.celsius !== undefined && entry.celsius <= FROST_CELSIUS)
    notes.push(
      'Without a rest voltage its charge and where its acid freezes are not known; that it was not in frost was answered, not measured',
    );
  return notes;
}
