import type { Block } from '../../src/report/sheet.ts';
import { evaluateFormula } from './modelFormulas.ts';
import type { ModelSheet, ModelWorkbook, Value } from './workbookModel.ts';
import { ErrorValue, numberFormatAt, overlap, Refusal } from './workbookModel.ts';

const ERRORS = [
  '#N/A',
  '#VALUE!',
  '#NAME?',
  '#REF!',
  '#DIV/0!',
  '#NUM!',
  '#NULL!',
  '#SPILL!',
  '#CALC!',
  '#BUSY!',
];

/** What a text becomes when it is put into a cell: the program reads it as if it were typed. */
function typed(text: string): { value: Value; format?: string } {
  if (text.startsWith("'")) return { value: text.slice(1) };
  if (/^(true|false)$/i.test(text)) return { value: /^true$/i.test(text) };
  if (ERRORS.includes(text)) return { value: new ErrorValue(text) };
  if (/^\s*[-+]?[\d,]*\.?\d+(e[-+]?\d+)?\s*$/i.test(text)) return { value: Number(text.replace(/,/g, '')) };
  if (/^\d+(\.\d+)?%$/.test(text)) return { value: Number(text.slice(0, -1)) / 100, format: '0%' };
  const date = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text) ?? usDate(text);
  if (date === null) return { value: text };
  const serial = Date.UTC(Number(date[1]), Number(date[2]) - 1, Number(date[3])) / 86_400_000 + 25_569;
  return { value: serial, format: 'm/d/yyyy' };
}

function usDate(text: string): string[] | null {
  const match = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/.exec(text);
  return match === null ? null : ['', match[3]!, match[1]!, match[2]!];
}

const key = (row: number, column: number): string => `${row},${column}`;

/** Puts a value, a text or a formula into a cell. Null leaves the cell as it is, an empty text empties it. */
export function enter(
  workbook: ModelWorkbook,
  sheet: ModelSheet,
  row: number,
  column: number,
  given: unknown,
): void {
  if (given === null || given === undefined) return;
  if (typeof given !== 'string' && typeof given !== 'number' && typeof given !== 'boolean')
    throw new Refusal('InvalidArgument', 'a cell takes a number, a text or a truth value');
  refuseInsideSpill(sheet, row, column);
  workbook.changed = true;
  empty(sheet, row, column);
  if (given === '') return;
  if (typeof given !== 'string') return setValue(sheet, row, column, given);
  if (given.length > 32_767) throw new Refusal('InvalidArgument', 'a cell takes at most 32,767 characters');
  if (numberFormatAt(sheet, row, column) === '@')
    return setValue(sheet, row, column, given.replace(/^'/, ''));
  if (/^=./s.test(given)) return enterFormula(sheet, row, column, given);
  const { value, format } = typed(given);
  setValue(sheet, row, column, value);
  if (format !== undefined)
    sheet.looks.push({
      block: { row, column, rows: 1, columns: 1 },
      property: 'numberFormat',
      value: format,
    });
}

/** Empties a cell, and with it all that its formula had answered. */
export function empty(sheet: ModelSheet, row: number, column: number): void {
  sheet.formulas.delete(key(row, column));
  const spill = sheet.spills.get(key(row, column));
  sheet.spills.delete(key(row, column));
  if (spill !== undefined) eachCell(spill, (r, c) => delete sheet.cells[r]?.[c]);
  delete sheet.cells[row]?.[column];
}

/** Calls for each cell of a block. */
export function eachCell(block: Block, call: (row: number, column: number) => void): void {
  for (let row = block.row; row < block.row + block.rows; row += 1)
    for (let column = block.column; column < block.column + block.columns; column += 1) call(row, column);
}

function setValue(sheet: ModelSheet, row: number, column: number, value: Value): void {
  (sheet.cells[row] ??= [])[column] = value;
}

// Only the first cell of what a formula has answered can be written.
function refuseInsideSpill(sheet: ModelSheet, row: number, column: number): void {
  for (const [anchor, block] of sheet.spills)
    if (anchor !== key(row, column) && overlap(block, { row, column, rows: 1, columns: 1 }))
      throw new Refusal('InvalidOperation', 'part of a spilled answer cannot be changed');
}

function enterFormula(sheet: ModelSheet, row: number, column: number, formula: string): void {
  sheet.formulas.set(key(row, column), formula);
  // Until the next calculation.
  setValue(sheet, row, column, 0);
}

/** Answers every formula of the workbook anew; twice, for those that read what others answer further down. */
export function calculate(workbook: ModelWorkbook): void {
  for (let round = 0; round < 2; round += 1)
    for (const sheet of workbook.sheets)
      for (const [cell, formula] of sheet.formulas) {
        const [row, column] = cell.split(',').map(Number) as [number, number];
        answerCell(workbook, sheet, row, column, formula);
      }
}

function answerCell(
  workbook: ModelWorkbook,
  sheet: ModelSheet,
  row: number,
  column: number,
  formula: string,
): void {
  const before = sheet.spills.get(key(row, column));
  sheet.spills.delete(key(row, column));
  if (before !== undefined) eachCell(before, (r, c) => delete sheet.cells[r]?.[c]);
  const answer = evaluateFormula(formula.slice(1), { workbook, sheet, row, column });
  if (!Array.isArray(answer)) return setValue(sheet, row, column, answer ?? 0);
  const block = { row, column, rows: answer.length, columns: answer[0]?.length ?? 1 };
  if (!isFree(sheet, block)) return setValue(sheet, row, column, new ErrorValue('#SPILL!'));
  eachCell(block, (r, c) => setValue(sheet, r, c, answer[r - row]?.[c - column] ?? 0));
  if (block.rows * block.columns > 1) sheet.spills.set(key(row, column), block);
}

function isFree(sheet: ModelSheet, block: Block): boolean {
  if (block.rows * block.columns === 1) return true;
  if (sheet.tables.some((table) => overlap(table.block, block))) return false;
  let free = true;
  eachCell(block, (row, column) => {
    if (row === block.row && column === block.column) return;
    if (sheet.cells[row]?.[column] !== undefined) free = false;
  });
  return free;
}
