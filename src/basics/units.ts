import type { Outcome } from './outcome.ts';
import { answer, problem } from './outcome.ts';

/** Mean length of a calendar month in days; life statistics measure ages in it. */
export const DAYS_PER_MONTH = 30.4375;

/** Cells in a 12 V battery. */
export const CELLS = 6;

/** Temperature units a user may name. */
export type TemperatureUnit = 'C' | 'F';

/** Temperature in degrees Celsius from one in degrees Fahrenheit. */
export function celsiusFromFahrenheit(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

/** Temperature in degrees Fahrenheit from one in degrees Celsius. */
export function fahrenheitFromCelsius(celsius: number): number {
  return (celsius * 9) / 5 + 32;
}

/**
 * The temperature unit that a user named; a blank means Celsius.
 * @problem badInput  when it is neither C nor F
 */
export function temperatureUnit(given: unknown): Outcome<TemperatureUnit> {
  if (given === null || given === undefined || given === '') return answer('C');
  const word = String(given).trim().toUpperCase();
  if (word === 'C' || word === 'F') return answer(word);
  return problem('badInput', 'notAWord', 'unit', given, { more: { allowed: '"C" or "F"' } });
}
