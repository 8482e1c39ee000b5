import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import type { Block } from './block.ts';
import { cellText, isBlank } from './cells.ts';
import type { Field } from './fields.ts';
import { headerMatches } from './headerWords.ts';

/** Where the header stands and what it says. */
export type Header = {
  /** Index in the block of the header's first row; rows above it are titles. */
  readonly first: number;
  /** Index in the block of the first row under the header. */
  readonly dataFrom: number;
  /** Index in the block of the header's last row. */
  readonly last: number;
  /** One text for each column, as a finding names it. */
  readonly texts: readonly string[];
};

const ROWS_SEARCHED = 40;
const LEAST_FIELDS = 2;
/** Two rows are taken for one header only where that names clearly more: a title stands over many a header. */
const MORE_FOR_TWO = 0.4;
const UNIT =
  /^[([]?\s*(v|volts?|a|amps?|cca|°?\s*[cf]|yyyy-mm-dd|dd\/mm\/yyyy|mm\/dd\/yyyy|date|text|months?|%)\s*[)\]]?$/i;
const LOOKED_FOR = '"Serial no", "Date code", "Installed", "Removed", "Site", "OCV"';

/**
 * The header of a block: the row that names most fields, alone or together with the row under it (group heads over
 * heads, or units under heads). Rows above it are titles.
 * @param block  the part of the sheet that is read
 * @param headerRow  the sheet's own number of the header row, where the user named it
 * @param sheetName  for the sentence about a sheet without a header
 * @param leastFields  how many fields a header names at least
 * @problem notEnoughData  when no row names so many fields
 * @problem outOfRange  when the row that the user named is not in the block
 */
export function findHeader(
  block: Block,
  headerRow: number | undefined,
  sheetName: string,
  leastFields = LEAST_FIELDS,
): Outcome<Header> {
  if (headerRow !== undefined) return namedHeader(block, headerRow);
  let [best, most] = [undefined as Header | undefined, leastFields - 0.5];
  for (let index = 0; index < Math.min(block.rows.length, ROWS_SEARCHED); index += 1) {
    const [one, two] = [single(block, index), double(block, index)];
    const [named, together] = [fieldsNamed(one.texts), fieldsNamed(two?.texts ?? []) - MORE_FOR_TWO];
    if (named > most) [best, most] = [one, named];
    if (together > most) [best, most] = [two, together];
  }
  if (best !== undefined) return answer(withUnits(best, block));
  const more = { rows: Math.min(block.rows.length, ROWS_SEARCHED), looked: LOOKED_FOR };
  return problem('notEnoughData', 'noHeaderRow', 'sheet', sheetName, { more });
}

function namedHeader(block: Block, headerRow: number): Outcome<Header> {
  const index = headerRow - block.rowNumber(0);
  if (index < 0 || index >= block.rows.length - 1) {
    const limits = [block.rowNumber(0), block.rowNumber(block.rows.length - 2)] as const;
    return problem('outOfRange', 'headerRowOutside', 'headerRow', headerRow, { limits });
  }
  const [one, two] = [single(block, index), double(block, index)];
  const better = two !== undefined && fieldsNamed(two.texts) - MORE_FOR_TWO > fieldsNamed(one.texts);
  return answer(withUnits(better ? two : one, block));
}

const isHeaderCell = (cell: unknown): boolean =>
  typeof cell === 'string' && cell.trim() !== '' && cell.length <= 60;

function single(block: Block, index: number): Header {
  const texts = Array.from({ length: block.width }, (_, column) => {
    const cell = block.rows[index]![column];
    return isHeaderCell(cell) ? cellText(cell) : '';
  });
  return { first: index, dataFrom: index + 1, last: index, texts };
}

// A row of data is no second header row: headers hold hardly a figure.
function double(block: Block, index: number): Header | undefined {
  const [upper, lower] = [block.rows[index], block.rows[index + 1]];
  if (upper === undefined || lower === undefined || !readsAsHeads(upper) || !readsAsHeads(lower))
    return undefined;
  const texts: string[] = [];
  let group = '';
  for (let column = 0; column < block.width; column += 1) {
    const [over, under] = [cellText(upper[column]), cellText(lower[column])];
    if (over !== '') group = over;
    texts.push(joined(over, group, under));
  }
  return { first: index, dataFrom: index + 2, last: index + 1, texts };
}

// A group head stands over several columns, in the first of them: the others take it where they need it.
function joined(over: string, group: string, under: string): string {
  if (under === '') return over;
  if (over === '' && headerMatches(under).length > 0) return under;
  return group === '' ? under : `${group} ${under}`;
}

// A row of units under the heads belongs to them.
function withUnits(header: Header, block: Block): Header {
  const under = block.rows[header.dataFrom];
  const filled = under?.filter((cell) => !isBlank(cell)) ?? [];
  if (under === undefined || filled.length === 0 || !filled.every((cell) => UNIT.test(cellText(cell))))
    return header;
  const texts = header.texts.map((text, column) => {
    const unit = cellText(under[column]).replace(/^[([]|[)\]]$/g, '');
    return unit === '' ? text : `${text} (${unit})`;
  });
  return { ...header, dataFrom: header.dataFrom + 1, texts };
}

function readsAsHeads(row: Block['rows'][number]): boolean {
  let [filled, withFigures] = [0, 0];
  for (const cell of row) {
    if (isBlank(cell)) continue;
    filled += 1;
    if (typeof cell !== 'string' || /\d{2}/.test(cell)) withFigures += 1;
  }
  return filled > 0 && withFigures / filled < 0.2;
}

/** How many fields a header names; a name in so many words counts a little more than one inside a longer header. */
function fieldsNamed(texts: readonly string[]): number {
  const best = new Map<Field, number>();
  for (const text of texts) {
    const match = headerMatches(text)[0];
    if (match !== undefined) best.set(match.field, Math.max(best.get(match.field) ?? 0, match.score));
  }
  return [...best.values()].reduce((sum, score) => sum + 0.5 + score / 2, 0);
}
