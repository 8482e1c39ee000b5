import { isBlank } from './cells.ts';
import type { Field } from './fields.ts';
import type { Cell } from './inventory.ts';
import type { ReadContext } from './lines.ts';
import { newQuirks } from './quirks.ts';
import type { NumberReading } from './readNumber.ts';
import { readNumber } from './readNumber.ts';
import { temperatureScale } from './temperatureColumn.ts';

/** A column of numbers; NaN = empty. Temperatures come out in degrees Celsius. */
export function numberColumn(context: ReadContext, field: Field): Float64Array {
  const { kept, block } = context;
  const column = context.at.get(field)!;
  const values = new Float64Array(kept.length).fill(Number.NaN);
  const readings = readAll(context, column);
  const celsius = field === 'temperature' ? temperatureScale(context, readings) : undefined;
  const quirks = newQuirks(context, field);
  let filled = 0;
  for (let line = 0; line < kept.length; line += 1) {
    const reading = readings[line];
    if (reading === undefined) continue;
    filled += 1;
    const value = zeroIsBlank(field) && reading.value === 0 ? undefined : reading.value;
    if (value !== undefined) values[line] = celsius === undefined ? value : celsius(reading, line);
    const cell = block.rows[kept[line]!]![column];
    if (reading.quirk !== undefined && !isUsual(field, reading))
      quirks.note(block.rowNumber(kept[line]!), reading.quirk, cell, doneWith(reading));
  }
  quirks.close(filled);
  return values;
}

// A rating is written with its kind, 800 EN: that is how labels say it.
const isUsual = (field: Field, { quirk }: NumberReading): boolean =>
  field === 'rating' && quirk === 'number with its unit';

// No battery shows 0 V, no owner accepts 0 A: such a 0 is an empty cell. A cranking reading of 0 and 0 C are real.
const zeroIsBlank = (field: Field): boolean =>
  field === 'restVolts' || field === 'loadVolts' || field === 'least' || field === 'rating';

function readAll(context: ReadContext, column: number): (NumberReading | undefined)[] {
  const seen = new Map<Cell, NumberReading>();
  return context.kept.map((row) => {
    const cell = context.block.rows[row]![column];
    if (isBlank(cell)) return undefined;
    const known = seen.get(cell);
    if (known !== undefined) return known;
    const reading = readNumber(cell);
    seen.set(cell, reading);
    return reading;
  });
}

function doneWith({ value, quirk, fahrenheit }: NumberReading): string | undefined {
  if (value === undefined) return quirk === 'placeholder' ? 'counts as empty' : undefined;
  if (fahrenheit === true) return `read as ${Number(value.toFixed(1))} C`;
  return `read as ${value}`;
}
