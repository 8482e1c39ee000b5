import type { Day } from '../basics/calendar.ts';
import type { Block } from './block.ts';
import { cellText, isBlank, isError, isPlaceholder } from './cells.ts';
import type { Field } from './fields.ts';
import { FIELD_SPECS } from './fields.ts';
import type { Cell } from './inventory.ts';
import { readDate } from './readDate.ts';
import { readNumber } from './readNumber.ts';

/** What the cells of a column look like, as shares (0 to 1) of a sample of its filled cells. */
export type ColumnLook = {
  readonly filled: number;
  readonly dates: number;
  readonly dateCells: number;
  readonly numbers: readonly number[];
  /** Cells that hold a letter and are neither date nor number. */
  readonly words: number;
  readonly distinct: number;
  readonly codes: number;
  readonly stockNumbers: number;
  readonly makerCodes: number;
};

const SAMPLE = 300;

/** The filled cells of a column that are looked at, spread over the whole column. */
function sampleOf(block: Block, from: number, column: number): { cell: Cell; isDate: boolean }[] {
  const step = Math.max(1, Math.floor((block.rows.length - from) / (4 * SAMPLE)));
  const sample: { cell: Cell; isDate: boolean }[] = [];
  for (let row = from; row < block.rows.length && sample.length < SAMPLE * 4; row += step) {
    const cell = block.rows[row]![column];
    if (isBlank(cell) || isError(cell) || isPlaceholder(cell)) continue;
    sample.push({ cell, isDate: block.isDateCell(row, column) });
  }
  return sample;
}

/** What the cells of a column look like. */
export function columnLook(block: Block, from: number, column: number, asOf: Day): ColumnLook {
  const sample = sampleOf(block, from, column);
  const share = (test: (cell: Cell, isDate: boolean) => boolean): number =>
    sample.length === 0 ? 0 : sample.filter(({ cell, isDate }) => test(cell, isDate)).length / sample.length;
  return {
    filled: sample.length,
    dates: share((cell) => looksLikeDate(cell, asOf)),
    dateCells: share((_, isDate) => isDate),
    numbers: sample.flatMap(({ cell }) => readNumber(cell).value ?? []),
    words: share(
      (cell) =>
        /[a-z]{2}/i.test(cellText(cell)) &&
        !looksLikeDate(cell, asOf) &&
        readNumber(cell).value === undefined,
    ),
    distinct: new Set(sample.map(({ cell }) => cellText(cell))).size / Math.max(1, sample.length),
    codes: share((cell) => CODE.test(cellText(cell))),
    stockNumbers: share((cell) => STOCK_NUMBER.test(cellText(cell))),
    makerCodes: share((cell) => MAKER_CODE.test(cellText(cell))),
  };
}

const CODE = /^(?=.*\d)[A-Z0-9][A-Z0-9]?[A-Z0-9 /–-]{1,18}$/i;
const STOCK_NUMBER = /^6140[- ]?\d{2}[- ]?[0-9A-Z]{3}[- ]?\d{4}$/i;
const MAKER_CODE = /^(?=.*[A-Z])[0-9A-Z]{5}$/;

function looksLikeDate(cell: Cell, asOf: Day): boolean {
  const { day, quirk } = readDate(cell, { asOf });
  return day !== undefined || quirk === 'text date that reads two ways';
}

const NUMBER_LIMITS: Readonly<Partial<Record<Field, readonly [number, number]>>> = {
  restVolts: [2, 40],
  temperature: [-60, 160],
  reading: [5, 3000],
  loadVolts: [2, 30],
  least: [5, 3000],
  rating: [40, 3000],
  pricePaid: [0, 1e6],
};

/** How well the cells of a column fit a field, 0 to 1; a column without cells fits half. */
export function fitOf(field: Field, look: ColumnLook): number {
  if (look.filled === 0) return 0.5;
  const { kind } = FIELD_SPECS[field];
  if (kind === 'date') return look.dates;
  if (kind === 'number') return numberFit(field, look);
  if (kind === 'code')
    return look.dateCells > 0.8
      ? 0
      : Math.max(look.codes, 1 - look.words - look.dateCells) * (1 - look.dateCells);
  if (field === 'serial') return Math.min(1, 1.5 * look.distinct) * (1 - look.dateCells);
  if (kind === 'identifier') return 1 - look.dateCells;
  return wordFit(field, look);
}

function numberFit(field: Field, look: ColumnLook): number {
  const [low, high] = NUMBER_LIMITS[field] ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const inside = look.numbers.filter((value) => value === 0 || (value >= low && value <= high)).length;
  return (inside / look.filled) * (1 - look.dateCells);
}

// A word field may hold short codes and figures (a type "6", a status "2"), but neither dates nor one-off texts.
function wordFit(field: Field, look: ColumnLook): number {
  const notDates = 1 - Math.max(look.dateCells, look.words === 0 ? 0 : look.dates);
  if (field === 'site' || field === 'status' || field === 'type') {
    return notDates * (look.filled > 40 && look.distinct > 0.9 ? 0.3 : 1);
  }
  return notDates;
}
