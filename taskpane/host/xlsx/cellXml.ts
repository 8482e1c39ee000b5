import { address } from '../../../src/report/sheet.ts';
import type { HostCell } from '../sheetHost.ts';
import { escaped, escapedCell } from './xml.ts';

/** A cell to be written, its formula in the words of the file. */
export type CellToWrite = {
  readonly value: HostCell;
  readonly formula?: string;
  /** The block that an array formula fills, such as A2:C9. */
  readonly fills?: string;
  /** Number of the entry that marks dynamic arrays, where the formula is one. */
  readonly dynamic?: number;
  /** Its cell style, or what it becomes from the one the place has; left out to keep that. */
  readonly style?: number | ((had: number) => number);
  /** Only its answer is new: the formula that stands there stays. */
  readonly keepsFormula?: boolean;
};

/** Errors that every program reads; newer ones are saved as the plainest of these. */
const ERRORS = ['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A'];

/** The text of a cell element. */
export function cellXml(
  prefix: string,
  row: number,
  column: number,
  style: number,
  cell: CellToWrite,
): string {
  const { type, content } = contentOf(prefix, cell);
  const looks = style > 0 ? ` s="${style}"` : '';
  const marks = cell.dynamic === undefined ? '' : ` cm="${cell.dynamic}"`;
  const head = `<${prefix}c r="${address(row, column)}"${looks}${type}${marks}`;
  return content === '' ? `${head}/>` : `${head}>${content}</${prefix}c>`;
}

type Content = { readonly type: string; readonly content: string };

function contentOf(prefix: string, cell: CellToWrite): Content {
  const [formula, { value }] = [formulaXml(prefix, cell), cell];
  if (value === null) return { type: '', content: formula };
  if (typeof value === 'string' && formula === '') {
    const text = `<${prefix}t xml:space="preserve">${escapedCell(value)}</${prefix}t>`;
    return { type: ' t="inlineStr"', content: `<${prefix}is>${text}</${prefix}is>` };
  }
  const { type, text } = valueOf(value);
  return { type, content: `${formula}<${prefix}v>${text}</${prefix}v>` };
}

/** A value as it stands beside a formula or alone. */
export function valueOf(value: Exclude<HostCell, null>): { readonly type: string; readonly text: string } {
  if (typeof value === 'number')
    return Number.isFinite(value) ? { type: '', text: String(value) } : { type: ' t="e"', text: '#NUM!' };
  if (typeof value === 'boolean') return { type: ' t="b"', text: value ? '1' : '0' };
  if (typeof value === 'string') return { type: ' t="str"', text: escapedCell(value) };
  return { type: ' t="e"', text: ERRORS.includes(value.error) ? value.error : '#VALUE!' };
}

function formulaXml(prefix: string, { formula, fills }: CellToWrite): string {
  if (formula === undefined) return '';
  const block = fills === undefined ? '' : ` t="array" ref="${fills}"`;
  return `<${prefix}f${block}>${escaped(formula)}</${prefix}f>`;
}
