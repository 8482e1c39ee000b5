import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import { SURFACE_CHARGE_VOLTS } from '../electrochemistry/restReading.ts';
import type { BatteryTest, Compared } from './batteryTest.ts';
import type { Judgement, VerdictLine } from './verdict.ts';
import {
  CLOSE_TO_LEAST,
  COLD_READING_CELSIUS,
  DOES_NOT_COME_UP_VOLTS,
  HOT_CELSIUS,
  isCloseToLeast,
  judge,
  LEAST_CHARGE_TO_TEST,
} from './verdict.ts';

/** How a reason ends where no temperature was given: nothing in it then rests on cold or warm. */
export const TEMPERATURE_NOT_GIVEN = 'temperature not given';

/**
 * Why a battery gets its verdict, in one sentence, and the next step, with the caution that belongs to that step. It is
 * read from the same decision as the verdict, so the two always agree. Local rules and licensed practice decide.
 * @param test as verdict
 * @returns reason and next step; it ends "temperature not given" where that is so
 * @problem missing     as verdict
 * @problem badInput    as verdict
 * @problem outOfRange  as verdict
 * @source tb9-6140-252-13 as verdict
 * @source phmsaLetters a leaking sealed battery is no longer non-spillable
 * @source oshaWetCells eye and face protection, no flames or sparks, ventilation
 * @example verdictReason({ reading: 1150, least: 980, volts: 12.8, celsius: -25 }) // "The reading 1150 A is not under the least accepted, 980 A. Fit for use"
 */
export function verdictReason(test: BatteryTest): Outcome<string> {
  return andThen(judge(test), (judgement) => answer(reasonOf(judgement)));
}

/**
 * The reason and next step of a judgement that has been made already.
 * @param judgement what judge answered
 * @returns reason and next step
 * @example reasonOf({ line: 8, word: 'Serviceable', test: { celsius: 20 }, compared: { reading: 9.7, least: 9.6, unit: 'V' } }) // "The reading 9.7 V is not under the least accepted, 9.6 V. Fit for use"
 */
export function reasonOf(judgement: Judgement): string {
  const { reason, nextStep } = reasonAndNextStep(judgement);
  const ending = judgement.test.celsius === undefined ? `; ${TEMPERATURE_NOT_GIVEN}` : '';
  return `${reason}. ${nextStep}${ending}`;
}

/**
 * The reason of a judgement and its next step, apart.
 * @param judgement what judge answered
 * @returns reason and next step, each without its full stop
 * @example reasonAndNextStep({ line: 1, word: 'Condemned', test: { damage: true } }).reason // "Damage is noted on it"
 */
export function reasonAndNextStep(judgement: Judgement): {
  readonly reason: string;
  readonly nextStep: string;
} {
  const [reason, nextStep] = SENTENCES[judgement.line](judgement);
  return { reason, nextStep };
}

type Sentences = readonly [reason: string, nextStep: string];

/** Every sentence about a verdict, by the line that decides it. */
const SENTENCES: Record<VerdictLine, (judgement: Judgement) => Sentences> = {
  1: () => [
    'Damage is noted on it',
    'Do not test, charge or jump it: acid may leak, so wear face shield and gloves and have neutraliser at hand; a cracked or leaking sealed battery ships as UN2794, no longer as non-spillable',
  ],
  2: (judged) => [
    `At ${degrees(judged.test)} it may be frozen, as ${volts(judged.test)} can mean acid that freezes from about ${Math.round(judged.rest?.freezesAt ?? 0)} C`,
    'Do not charge, jump or test it, a frozen battery can burst; thaw it slowly indoors without direct heat, then look for cracks',
  ],
  3: ({ test }) => [
    `At ${degrees(test)} it is hot, over ${HOT_CELSIUS} C`,
    'Switch the charger off before the clamps come off, stand clear and let it cool in open air; hot without reason means a fault inside, so do not charge it again then',
  ],
  4: ({ test, rest }) => [
    `${volts(test)} is more than ${SURFACE_CHARGE_VOLTS} V above its full rest voltage, ${rest!.fullVolts.toFixed(2)} V: on charge, on float or not rested`,
    'Switch the charger off, disconnect it, no flames or sparks near it (hydrogen), rest it 3 h at least, 8 h better, and read again',
  ],
  5: ({ word, compared }) =>
    word === 'Serviceable'
      ? [`${notUnder(compared!)}, though its rest voltage was not given`, 'Fit for use']
      : [
          `${under(compared!)}, but without a rest voltage it may only be discharged`,
          'Measure the rest voltage first: disconnected, after 3 h of rest at least, 8 h better',
        ],
  6: (judged) => (judged.word === 'Condemned' ? doesNotComeUp(judged) : tooLittleCharge(judged)),
  7: ({ test }) => [
    `At ${volts(test)} it is charged, but there is no cranking reading`,
    'Take a cranking reading of it alone, disconnected from its set',
  ],
  8: ({ compared }) => [notUnder(compared!), 'Fit for use'],
  9: ({ test, compared }) => [
    `${under(compared!)}, but at ${degrees(test)}, below ${COLD_READING_CELSIUS} C, a reading in amperes is not held against it`,
    'Warm it to 10 C or more and read again',
  ],
  10: ({ test, compared }) => [
    `${under(compared!)}: failed once`,
    `Full charge by itself, 8 h rest, clean posts, read it alone, test again${chargingCaution(test)}`,
  ],
  11: ({ compared }) => [
    `${under(compared!)}, again after a full charge and rest`,
    isCloseToLeast(compared!)
      ? `It is within ${100 * CLOSE_TO_LEAST} % of the least: read once more, same tester, before acting`
      : TURN_IN,
  ],
};

const TURN_IN = 'Take it out of use, cover its posts and turn it in as condemned';

function tooLittleCharge({ test, rest }: Judgement): Sentences {
  const again = test.retest === 1 ? ', even though it was charged after a failing test' : '';
  return [
    `A rest voltage of ${volts(test)} means ${chargeWords(rest!.charge!)}${again}: too little to judge it by a test`,
    `Charge it alone until it takes under 1 A for an hour, rest it 8 h and test again${chargingCaution(test)}`,
  ];
}

function doesNotComeUp({ test, rest }: Judgement): Sentences {
  const low =
    test.volts! < DOES_NOT_COME_UP_VOLTS
      ? `under ${DOES_NOT_COME_UP_VOLTS.toFixed(1)} V`
      : chargeWords(rest!.charge!);
  const charges = test.retest === 2 ? 'a second full charge' : 'a full charge';
  return [`After ${charges} it rests at ${volts(test)}, ${low}: it does not come up`, TURN_IN];
}

// Where the temperature is known, frost has been judged before a charge is advised.
function chargingCaution({ celsius }: BatteryTest): string {
  const frost = celsius === undefined ? '; if it has been in frost, thaw it slowly indoors first' : '';
  return `; charger set for its construction, ventilate, no flames or sparks (hydrogen), stop at ${HOT_CELSIUS} C${frost}`;
}

const under = ({ reading, least, unit }: Compared): string =>
  `The reading ${shownAmount(reading)} ${unit} is under the least accepted, ${shownAmount(least)} ${unit}`;

const notUnder = ({ reading, least, unit }: Compared): string =>
  `The reading ${shownAmount(reading)} ${unit} is not under the least accepted, ${shownAmount(least)} ${unit}`;

const volts = (test: BatteryTest): string => `${test.volts!.toFixed(2)} V`;

const degrees = (test: BatteryTest): string => `${Number(test.celsius!.toFixed(1))} C`;

// Six figures: none more than a tester shows or a sum needs, enough to tell a reading from the least beside it.
const shownAmount = (amount: number): string => String(Number(amount.toPrecision(6)));

// A rest voltage tells charge to some seven points, so steps of 5 % are as fine as it can be said.
function chargeWords(charge: number): string {
  const percent = 5 * Math.round(20 * charge);
  if (percent >= 100 * LEAST_CHARGE_TO_TEST) return `a charge just under ${100 * LEAST_CHARGE_TO_TEST} %`;
  return percent === 0 ? 'no charge left' : `a charge of about ${percent} %`;
}
