import { isoDay } from '../basics/calendar.ts';
import type { Field } from './fields.ts';
import type { Cell } from './inventory.ts';
import type { DateColumn, ReadContext } from './lines.ts';
import { newQuirks } from './quirks.ts';
import type { DateReading } from './readDate.ts';
import { readDate, shownOrder } from './readDate.ts';
import { isBlank } from './cells.ts';

/** Days between the first day of the two date systems. */
const DAYS_1904_AFTER_1900 = 1462;

const TWO_WAYS = 'text date that reads two ways' as const;

/** A column of dates. Text is read once for each distinct text. */
export function dateColumn(context: ReadContext, field: Field): DateColumn {
  const { kept, block } = context;
  const column = context.at.get(field)!;
  const [first, last] = [
    new Float64Array(kept.length).fill(Number.NaN),
    new Float64Array(kept.length).fill(Number.NaN),
  ];
  const quirks = newQuirks(context, field);
  const read = dateReader(context, column);
  let filled = 0;
  for (let line = 0; line < kept.length; line += 1) {
    const cell = block.rows[kept[line]!]![column];
    if (isBlank(cell)) continue;
    filled += 1;
    const reading = read(cell, kept[line]!);
    if (reading.day !== undefined) [first[line], last[line]] = [reading.day, reading.last!];
    if (reading.quirk === TWO_WAYS && reading.day !== undefined)
      context.findings.repairedRows.add(block.rowNumber(kept[line]!));
    if (reading.quirk !== undefined)
      quirks.note(block.rowNumber(kept[line]!), reading.quirk, cell, doneWith(reading));
  }
  quirks.close(filled);
  return { first, last };
}

/** From so many dates on that read one way only, the order of the others in their column is no longer asked. */
const PLAINLY_SHOWN = 10;

/**
 * Reads the date cells of one column. A text that reads two ways is read as the settings say, else as the others of
 * the column show; where those are few it stays something to check.
 */
function dateReader(context: ReadContext, column: number): (cell: Cell, row: number) => DateReading {
  const { block, kept, asOf } = context;
  const shown = shownOrder(kept.map((row) => block.rows[row]![column]));
  const sure = context.dateOrder ?? ((shown?.count ?? 0) >= PLAINLY_SHOWN ? shown!.order : undefined);
  const dates = { asOf, ...(sure === undefined ? {} : { order: sure }) };
  const seen = new Map<string, DateReading>();
  return (cell, row) => {
    if (typeof cell === 'number') return readDate(in1900(context, cell, row, column), dates);
    if (typeof cell !== 'string') return readDate(cell, dates);
    const known = seen.get(cell);
    if (known !== undefined) return known;
    const plain = readDate(cell, dates);
    const isOpen = plain.quirk === TWO_WAYS && shown !== undefined;
    const reading = isOpen ? { ...readDate(cell, { asOf, order: shown.order }), quirk: TWO_WAYS } : plain;
    seen.set(cell, reading);
    return reading;
  };
}

function in1900(context: ReadContext, value: number, row: number, column: number): number {
  if (!context.from1904 || (context.knowsDateCells && context.block.isDateCell(row, column))) return value;
  return value >= 0 && value < 100_000 ? value + DAYS_1904_AFTER_1900 : value;
}

function doneWith({ day, last, quirk }: DateReading): string | undefined {
  if (day === undefined) return quirk === 'placeholder' ? 'counts as empty' : undefined;
  if (quirk === TWO_WAYS)
    return `read as ${isoDay(day)}, as the other dates of the column show; say so if they show it wrongly`;
  return day === last ? `read as ${isoDay(day)}` : `read as the month ${isoDay(day).slice(0, 7)}`;
}
