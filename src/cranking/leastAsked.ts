import { READINGS_ARE_AMPS_FROM } from './batteryTest.ts';
import { loadTestFloor } from './loadTestFloor.ts';

/** What was read at a battery, with the owner's least and the battery's temperature [C] where they are known. */
export type ReadAgainst = {
  readonly reading?: number;
  readonly loadVolts?: number;
  readonly least?: number;
  readonly celsius?: number;
};

/** A reading with the least that is asked of it; the least is missing where there is none to hold it against. */
export type Asked = { readonly reading?: number; readonly least?: number };

/**
 * The reading that counts and the least asked of it: a cranking reading goes before load-test volts; for load-test
 * volts the published floor stands in where the owner's least is in amperes or not given.
 * @param read cranking reading [A] or volts of a load test, least in its unit, temperature [C]
 * @returns reading and least; no least where none in the reading's unit is known
 * @source vehicleServiceTexts as loadTestFloor
 * @example leastAsked({ loadVolts: 9.7, least: 980, celsius: 25 }) // {"reading":9.7,"least":9.6}
 */
export function leastAsked({ reading, loadVolts, least, celsius }: ReadAgainst): Asked {
  const counts = reading ?? loadVolts;
  if (counts === undefined) return {};
  if (least !== undefined && least > 0 && (counts === 0 || isVolts(least) === isVolts(counts)))
    return { reading: counts, least };
  if (reading !== undefined || celsius === undefined) return { reading: counts };
  const floor = loadTestFloor(celsius);
  return floor.ok ? { reading: counts, least: floor.value } : { reading: counts };
}

const isVolts = (amount: number): boolean => amount < READINGS_ARE_AMPS_FROM;
