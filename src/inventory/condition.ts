import type { Day } from '../basics/calendar.ts';
import { problemText } from '../basics/problemText.ts';
import type { BatteryTest } from '../cranking/batteryTest.ts';
import { nothingGiven } from '../cranking/batteryTest.ts';
import { judge } from '../cranking/verdict.ts';
import { reasonOf } from '../cranking/verdictReason.ts';
import { stateOfCharge } from '../electrochemistry/stateOfCharge.ts';
import type { Battery, Construction, Readings } from '../service/battery.ts';
import { rechargeBy } from '../storage/rechargeBy.ts';
import type { RawReadings } from './readings.ts';
import { batteryTestOf } from './voltFindings.ts';

/** How a battery is, from its latest readings. */
export type Condition = Pick<Battery, 'verdict' | 'verdictReason' | 'charge' | 'readings'>;

/** The verdict, charge and readings of a battery; nothing where there is nothing to judge. */
export function conditionOf(raw: RawReadings, construction: Construction, assumed: boolean): Condition {
  const test = batteryTestOf(raw, construction, false);
  const readings = readingsShown(raw, test);
  if (nothingGiven(test)) return { readings };
  const { verdict, verdictReason } = judged(raw, test, assumed);
  return { verdict, verdictReason, charge: chargeOf(test), readings };
}

function judged(raw: RawReadings, test: BatteryTest, assumed: boolean): Condition {
  const judgement = judge(test);
  if (!judgement.ok) return { verdict: 'Not judged', verdictReason: problemText(judgement.problem) };
  const dropped = test.reading === undefined && (raw.reading ?? raw.loadVolts) !== undefined;
  const cautions = [
    ...(dropped ? ['a reading is on record without a least accepted that it can be held against'] : []),
    ...(assumed ? ['construction not known, taken as AGM'] : []),
  ];
  return {
    verdict: judgement.value.word,
    verdictReason: [reasonOf(judgement.value), ...cautions].join('; '),
  };
}

// Under 11.3 V a battery counts as empty, as in the verdict; on charge or not rested it tells nothing.
function chargeOf({ volts, celsius, construction }: BatteryTest): number | undefined {
  if (volts === undefined || (celsius !== undefined && celsius > 60)) return undefined;
  const charge = stateOfCharge(volts, celsius, construction);
  if (charge.ok) return charge.value;
  return charge.problem.because === 'deadCell' ? 0 : undefined;
}

function readingsShown(raw: RawReadings, test: BatteryTest): Readings | undefined {
  const { testedOn, chargedOn, rating } = raw;
  const reading = test.reading ?? raw.reading;
  const isEmpty = [testedOn, chargedOn, rating, test.volts, test.celsius, reading].every(
    (one) => one === undefined,
  );
  if (isEmpty && !raw.damaged) return undefined;
  return {
    testedOn,
    chargedOn,
    restVolts: test.volts,
    celsius: test.celsius,
    reading,
    least: test.least ?? raw.least,
    rating,
    retest: raw.retest === 0 ? undefined : raw.retest,
    damaged: raw.damaged ? true : undefined,
  };
}

/** Cold enough that the months since the last charge decide alone, not what is lost meanwhile [C]. */
export const MONTHS_ALONE_CELSIUS = 0;

/**
 * The date by which a stored battery is to be charged again. Where the average temperature of its place is not
 * known only the most months since the last full charge count; a warm store asks for it sooner.
 */
export function chargeByOf(
  chargedOn: Day | undefined,
  average: number | undefined,
  construction: Construction,
): Day | undefined {
  if (chargedOn === undefined) return undefined;
  const by = rechargeBy(chargedOn, average ?? MONTHS_ALONE_CELSIUS, construction);
  return by.ok ? by.value : undefined;
}
