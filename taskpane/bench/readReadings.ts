import type { Outcome } from '../../src/basics/outcome.ts';
import { answer, problem } from '../../src/basics/outcome.ts';
import { READINGS_ARE_AMPS_FROM } from '../../src/cranking/batteryTest.ts';
import { batteryVolts } from '../../src/electrochemistry/restReading.ts';
import { MOST_HOURS_AT_REST as MOST_HOURS } from '../../src/cranking/benchTest.ts';
import { readNumber } from '../../src/inventory/readNumber.ts';
import { READING_LABELS } from '../text/benchText.ts';

/** The readings that are typed, in the order of the bench. */
export const READINGS = ['restVolts', 'hoursAtRest', 'celsius', 'reading', 'loadVolts', 'least'] as const;
export type ReadingName = (typeof READINGS)[number];

/** What stands in the fields of the readings, as it was typed. */
export type TypedReadings = Readonly<Record<ReadingName, string>>;

/** The readings as numbers, and what is wrong with those that are none. */
export type ReadReadings = {
  readonly values: Partial<Record<ReadingName, number>>;
  readonly wrong: Partial<Record<ReadingName, Outcome<never>>>;
};

/** A field as it is labelled, so that a refusal names what the clerk sees, with its unit. */
const wordsOf = (name: ReadingName): string =>
  READING_LABELS[name].replace(/^or (.)/, (_, first: string) => first.toUpperCase());

/** The units that may stand behind a number in its field: degrees among the volts are a reading in the wrong field. */
const UNITS: Readonly<Record<ReadingName, RegExp>> = {
  restVolts: /^v/i,
  hoursAtRest: /^$/,
  celsius: /^(°\s*|deg)?[cf]?\W*$/i,
  reading: /^(a|cca|ca|mca|en|din|iec|sae)/i,
  loadVolts: /^v/i,
  least: /^(v|a|cca|ca|mca|en|din|iec|sae)/i,
};

/** The readings as they were typed: a decimal comma and the field's unit behind the number are understood. */
export function readReadings(readings: TypedReadings): ReadReadings {
  const read: ReadReadings = { values: {}, wrong: {} };
  for (const name of READINGS) {
    const typed = readings[name].trim();
    if (typed === '') continue;
    const number = readOne(name, typed);
    if (number.ok) read.values[name] = number.value;
    else read.wrong[name] = number;
  }
  return read;
}

function readOne(name: ReadingName, typed: string): Outcome<number> {
  const { value } = readNumber(typed);
  const unit = /[a-z°]+\W*$/i.exec(typed)?.[0] ?? '';
  const isOfField = unit === '' || UNITS[name].test(unit);
  if (value !== undefined && isOfField) return CHECKS[name]?.(value, name) ?? answer(value);
  if (isVolts(name) && /mv\W*$/i.test(unit)) return voltsWritten(name, typed);
  return problem('badInput', 'notANumber', wordsOf(name), typed);
}

/** What a reading of its field can't be; what is left out here the verdict checks. */
const CHECKS: Readonly<Partial<Record<ReadingName, Check>>> = {
  restVolts: (value, name) => {
    const checked = batteryVolts(value);
    if (checked.ok) return undefined;
    return checked.problem.because === 'wholeSet' ? checked : voltsWritten(name, value);
  },
  hoursAtRest: (value, name) =>
    value < 0 || value > MOST_HOURS
      ? problem('outOfRange', 'outOfLimits', wordsOf(name), value, { limits: [0, MOST_HOURS] })
      : undefined,
  // Volts among the amperes would be judged as those of a load test, and amperes among its volts as amperes.
  reading: (value, name) =>
    value > 0 && value < READINGS_ARE_AMPS_FROM
      ? problem('outOfRange', 'voltsAmongAmperes', wordsOf(name), value)
      : undefined,
  loadVolts: (value, name) =>
    value < 0 || value >= READINGS_ARE_AMPS_FROM ? voltsWritten(name, value) : undefined,
};

type Refused = Extract<Outcome<never>, { readonly ok: false }>;
type Check = (value: number, name: ReadingName) => Refused | undefined;

const isVolts = (name: ReadingName): boolean => name === 'restVolts' || name === 'loadVolts';

const voltsWritten = (name: ReadingName, given: unknown): Refused =>
  problem('outOfRange', 'voltsWritten', wordsOf(name), given, {
    limits: [name === 'restVolts' ? 6 : 0, READINGS_ARE_AMPS_FROM],
    more: { like: name === 'restVolts' ? '12.60' : '9.60', not: name === 'restVolts' ? 1260 : 960 },
  });
