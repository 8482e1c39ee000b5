import type { Day } from '../src/basics/calendar.ts';
import { dayFrom } from '../src/basics/calendar.ts';
import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import type { LabelField } from '../src/label/labelElements.ts';
import { LABEL_FIELDS } from '../src/label/labelElements.ts';
import { labelField, labelRows, labelScan as coreLabelScan } from '../src/label/labelScan.ts';
import { DEFAULT_LAYOUT } from '../src/label/layout.ts';
import { lotNumber as coreLotNumber } from '../src/label/lotNumber.ts';
import { makerCode as coreMakerCode } from '../src/label/makerCode.ts';
import { manufactureDate as coreManufactureDate } from '../src/label/manufactureDate.ts';
import type { StockNumberPart } from '../src/label/stockNumber.ts';
import { stockNumber as coreStockNumber } from '../src/label/stockNumber.ts';
import type { Cell } from './cell.ts';
import { asBlock, eachCell, errorCell, isBlankOrZero, table } from './cell.ts';

/**
 * Date of manufacture as a spreadsheet date: the first day of the month or week that the code gives, or the day.
 * @customfunction MANUFACTUREDATE
 * @param {any[][]} code Manufacture code, text such as 0324-117; a number short of one digit gets a leading zero; cell or column
 * @param {any[][]} asOf Day of the question, date or text 2026-03-15; decides century and decade; cell or column
 * @param {any} [layout] Pieces yyyy yy y MM dd ooo kk WW A a12 lot in the maker's order, default "MMyy-lot"
 * @returns {any[][]} Date, one for each cell
 * @uncertainty Up to a month or a week for codes that give no day. A one-digit year may be ten years too young.
 * @notfor Codes whose layout isn't known: nothing is guessed, and two public lists of month letters differ from September on (A and a12).
 * @example =CRANK.MANUFACTUREDATE("0324-117", "2026-03-15")
 */
export function manufactureDate(code: any[][], asOf: any[][], layout?: any): any[][] {
  const inputs = { columns: [code, asOf], singles: [layout], blank: isBlankOrZero };
  return eachCell(inputs, ([cell, day]) =>
    andThen(layoutFrom(layout), (text) =>
      andThen(dayOrMissing(day), (known) => coreManufactureDate(cell, known, text)),
    ),
  );
}

/**
 * Lot of a manufacture code as text, leading zeros kept; empty where the code has none.
 * @customfunction LOTNUMBER
 * @param {any[][]} code Manufacture code, text such as 0324-117; cell or column
 * @param {any} [layout] Pieces yyyy yy y MM dd ooo kk WW A a12 lot in the maker's order, default "MMyy-lot"
 * @returns {any[][]} Lot, one for each cell
 * @uncertainty None: the lot stands in the code. It comes in upper case and without blanks, so that equal lots are equal text.
 * @notfor Checking the date: MANUFACTUREDATE refuses a month 13, this doesn't.
 * @example =CRANK.LOTNUMBER("0324-017")
 */
export function lotNumber(code: any[][], layout?: any): any[][] {
  return eachCell({ columns: [code], singles: [layout], blank: isBlankOrZero }, ([cell]) =>
    andThen(layoutFrom(layout), (text) => coreLotNumber(cell, text)),
  );
}

/**
 * Stock number checked and written 4-2-3-4, or a part of it, as text.
 * @customfunction STOCKNUMBER
 * @param {any[][]} text NATO or national stock number, 13 characters, with or without dashes; cell or column
 * @param {any} [part] "class" (first four), "country" (of the codification bureau) or "item" (the nine from the bureau on); default the whole
 * @returns {any[][]} Stock number or part, one for each cell
 * @uncertainty A stock number has no check digit: only its shape and bureau can be checked. Half of the bureaus are from memory.
 * @notfor Telling whether the number was ever given out, or what it buys.
 * @example =CRANK.STOCKNUMBER("6140990000123")
 */
export function stockNumber(text: any[][], part?: any): any[][] {
  return eachCell({ columns: [text], singles: [part], blank: isBlankOrZero }, ([cell]) =>
    andThen(partFrom(part), (wanted) => coreStockNumber(cell, wanted)),
  );
}

/**
 * Maker code (CAGE or NCAGE) in upper case, checked against the rules for its five characters.
 * @customfunction MAKERCODE
 * @param {any[][]} text Maker code, five letters and digits, as text; cell or column
 * @returns {any[][]} Maker code, one for each cell
 * @uncertainty The rules tell what can't be a code, never that a code was given out.
 * @notfor Finding the maker's name.
 * @example =CRANK.MAKERCODE("9zz98")
 */
export function makerCode(text: any[][]): any[][] {
  return eachCell({ columns: [text], blank: isBlankOrZero }, ([cell]) => coreMakerCode(cell));
}

/**
 * Table of field and value from the text of a label's 2-D symbol, or with field that value alone; a field that the label lacks is empty.
 * @customfunction LABELSCAN
 * @param {any[][]} symbol Scanned text: ISO/IEC 15434 format 05, 06 or 12, GS1, stock number, code or serial; <GS> or {GS} may be spelled; cell, or column with field
 * @param {any} [field] "serial", "part", "maker", "lot", "made" (a date), "stock" or "uii"; none = the table
 * @returns {any[][]} Table with the header field, value; or one value for each cell
 * @uncertainty Two-digit years 70 to 99 are read as 1970 to 1999, 00 to 69 as 2000 to 2069.
 * @notfor Makers' own formats, or a symbol that the scanner stripped of its control characters.
 * @example =CRANK.LABELSCAN("[)>{RS}06{GS}17V9ZZ98{GS}1PBX6T-100{GS}S0001234{RS}{EOT}", "uii")
 */
export function labelScan(symbol: any[][], field?: any): any[][] {
  const inputs = { columns: [symbol], singles: [field], blank: isBlankOrZero };
  if (!isBlankOrZero(field)) {
    return eachCell(inputs, ([cell]) => andThen(fieldFrom(field), (name) => labelField(cell, name)));
  }
  const cells = asBlock(symbol).flat();
  if (cells.length > 1) {
    return [
      [
        errorCell(
          problem('badInput', 'notOneSymbol', 'symbol', undefined, { more: { count: cells.length } }),
        ),
      ],
    ];
  }
  return isBlankOrZero(cells[0]) ? [['']] : table([symbol], () => scanTable(cells[0]));
}

function scanTable(symbol: unknown): Outcome<readonly (readonly Cell[])[]> {
  return andThen(coreLabelScan(symbol), (scan) => answer([['field', 'value'], ...labelRows(scan)]));
}

function dayOrMissing(cell: unknown): Outcome<Day> {
  return isBlankOrZero(cell) ? problem('missing', 'missing', 'asOf') : dayFrom(cell, 'asOf');
}

function layoutFrom(given: unknown): Outcome<string> {
  return answer(isBlankOrZero(given) ? DEFAULT_LAYOUT : String(given));
}

function partFrom(given: unknown): Outcome<StockNumberPart | undefined> {
  if (isBlankOrZero(given)) return answer(undefined);
  const word = String(given).trim().toLowerCase();
  if (word === 'class' || word === 'country' || word === 'item') return answer<StockNumberPart>(word);
  return problem('badInput', 'notAWord', 'part', given, {
    more: { allowed: '"class", "country" or "item"' },
  });
}

function fieldFrom(given: unknown): Outcome<LabelField> {
  const word = String(given).trim().toLowerCase();
  const field = LABEL_FIELDS.find((each) => each === word);
  if (field !== undefined) return answer(field);
  const allowed = LABEL_FIELDS.map((each) => `"${each}"`).join(', ');
  return problem('badInput', 'notAWord', 'field', given, { more: { allowed } });
}
