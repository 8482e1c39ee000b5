import { celsiusFromFahrenheit } from '../basics/units.ts';
import { headOf } from './lines.ts';
import type { ReadContext } from './lines.ts';
import type { NumberReading } from './readNumber.ts';

/** Over this no battery is tested [C]; a column where many are is in Fahrenheit. */
const HOTTER_THAN_TESTED = 45;
const MANY = 0.2;

const FAHRENHEIT_HEAD = /(\bdeg(rees)?\s*f\b|°\s*f\b|\(f\)|\bf$|fahrenheit)/i;
const CELSIUS_HEAD = /(\bdeg(rees)?\s*c\b|°\s*c\b|\(c\)|\bc$|celsius)/i;

/**
 * How the temperatures of a column become degrees Celsius: by the unit in the cell, else that of the settings, else that
 * of the header, which is not believed where more than a fifth of the column is hotter than a battery is ever tested.
 */
export function temperatureScale(
  context: ReadContext,
  readings: readonly (NumberReading | undefined)[],
): (reading: NumberReading) => number {
  const fahrenheit = isFahrenheit(context, readings);
  return ({ value, celsius, fahrenheit: converted }) =>
    fahrenheit && celsius !== true && converted !== true ? celsiusFromFahrenheit(value!) : value!;
}

function isFahrenheit(context: ReadContext, readings: readonly (NumberReading | undefined)[]): boolean {
  if (context.temperatureUnit !== undefined) return context.temperatureUnit === 'F';
  const head = headOf(context, 'temperature');
  if (FAHRENHEIT_HEAD.test(head)) return true;
  const plain = readings.flatMap((one) =>
    one?.value === undefined || one.celsius === true || one.fahrenheit === true ? [] : [one.value],
  );
  const hot = plain.filter((value) => value > HOTTER_THAN_TESTED && value < 150);
  if (hot.length === 0 || hot.length < MANY * plain.length) return false;
  report(context, head, readings, hot);
  readings.forEach((one, line) => {
    if (one?.value !== undefined)
      context.findings.repairedRows.add(context.block.rowNumber(context.kept[line]!));
  });
  return true;
}

function report(
  context: ReadContext,
  column: string,
  readings: readonly (NumberReading | undefined)[],
  hot: readonly number[],
): void {
  const claim = CELSIUS_HEAD.test(column) ? ', though its header says Celsius' : '';
  context.findings.add(context.block.rowNumber(context.kept[0]!), {
    kind: 'temperature must be Fahrenheit',
    column,
    count: readings.filter((one) => one?.value !== undefined).length,
    given: `${hot.length} temperatures over ${HOTTER_THAN_TESTED}, such as ${hot.slice(0, 3).join(', ')}`,
    done: `the whole column is taken as degrees Fahrenheit${claim}; the setting temperatureUnit decides otherwise`,
  });
}
