import type { BatteryTest } from '../cranking/batteryTest.ts';
import { leastAsked } from '../cranking/leastAsked.ts';
import { stateOfCharge } from '../electrochemistry/stateOfCharge.ts';
import type { Construction } from '../service/battery.ts';
import type { Field } from './fields.ts';
import type { FindingKind } from './findingKinds.ts';
import type { RawReadings } from './readings.ts';

/** Temperatures that a battery can be tested at [C]; outside them the cell counts as empty. */
const TESTED_CELSIUS = [-40, 100] as const;

/** No tester shows more [A]. */
const MOST_AMPS = 10_000;

type Note = (field: Field, kind: FindingKind, given: string, done?: string) => void;

/**
 * The readings of a battery as a test that can be judged: what no single battery can show is taken out, and reported
 * unless `quiet`. Load-test volts stand for a missing cranking reading, with the published floor as the least accepted.
 */
export function batteryTestOf(raw: RawReadings, construction: Construction, quiet: boolean): BatteryTest {
  const note: Note = (field, kind, given, done) => {
    if (quiet) return;
    const found = { kind, column: raw.lines.head(field), given };
    raw.findings.add(raw.row, done === undefined ? found : { ...found, done });
  };
  const celsius = checkedCelsius(raw, note);
  const volts = checkedVolts(raw, celsius, construction, note);
  const { reading, least } = crankingOf(raw, celsius, note);
  return { reading, least, volts, celsius, retest: raw.retest, construction, damage: raw.damaged };
}

function checkedCelsius({ celsius }: RawReadings, note: Note): number | undefined {
  if (celsius === undefined || (celsius >= TESTED_CELSIUS[0] && celsius <= TESTED_CELSIUS[1])) return celsius;
  note('temperature', 'temperature no battery can have', `${Number(celsius.toFixed(1))} C`);
  return undefined;
}

function checkedVolts(
  { restVolts }: RawReadings,
  celsius: number | undefined,
  construction: Construction,
  note: Note,
): number | undefined {
  if (restVolts === undefined) return undefined;
  const given = `${restVolts} V`;
  const charge = stateOfCharge(restVolts, Math.min(celsius ?? 25, 60), construction);
  if (charge.ok) return restVolts;
  const { because } = charge.problem;
  if (because === 'notRested') note('restVolts', 'on charge or not rested', given);
  else if (because === 'deadCell') note('restVolts', 'deeply discharged', given);
  else {
    note('restVolts', because === 'wholeSet' ? 'whole 24 V set' : 'no rest voltage of a battery', given);
    return undefined;
  }
  return restVolts;
}

type Cranking = Pick<BatteryTest, 'reading' | 'least'>;

const NOTHING: Cranking = {};

function crankingOf(raw: RawReadings, celsius: number | undefined, note: Note): Cranking {
  const { least } = raw;
  const field = raw.reading === undefined ? 'loadVolts' : 'reading';
  const reading = raw.reading ?? raw.loadVolts;
  if (reading === undefined) return NOTHING;
  if (reading < 0 || reading > MOST_AMPS) {
    note(field, 'unreadable number', String(reading), 'no cranking reading: counts as empty');
    return NOTHING;
  }
  const { loadVolts } = raw;
  const asked = leastAsked({ reading: raw.reading, loadVolts, least, celsius }).least;
  if (asked === undefined) {
    note(
      field,
      least === undefined ? 'reading without a least' : 'reading and least in different units',
      told(reading, least),
    );
    return NOTHING;
  }
  return { reading, least: asked };
}

const told = (reading: number, least: number | undefined): string =>
  least === undefined ? String(reading) : `${reading}, least ${least}`;
