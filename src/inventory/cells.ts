import type { Cell, CellError } from './inventory.ts';

/** The text of a cell without blanks around it; an empty cell and an error are empty text. */
export function cellText(cell: Cell): string {
  if (typeof cell === 'string')
    return cell.includes('\u00a0') ? cell.replaceAll('\u00a0', ' ').trim() : cell.trim();
  if (typeof cell === 'number') return String(cell);
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return '';
}

/** Whether a cell shows nothing. An error shows something. */
export function isBlank(cell: Cell): boolean {
  if (cell === null || cell === undefined) return true;
  return typeof cell === 'string' && (cell === '' || cell.trim() === '');
}

/** Whether a cell holds an error. */
export function isError(cell: Cell): cell is CellError {
  return typeof cell === 'object' && cell !== null;
}

/** A cell as a finding shows it: an error by its code. */
export function shownCell(cell: Cell): string {
  return isError(cell) ? cell.error : cellText(cell);
}

// Ways in which people fill a cell that has nothing to say.
const FILLERS = new Set(
  [
    'n/a, #n/a, na, n.a., n.a, n\\a, tbd, t.b.d., tba, tbc, tbn, unknown, unk, unkn, not known, not recorded, not available',
    'none recorded, nil, null, none, -, --, ---, –, —, ?, ??, ???, x, xx, xxx, xxxx, see remarks, see notes, pending, missing, blank, .',
    '9999, 99999, 999999, 9999999, 00/00/0000, 0000-00-00, 00.00.0000, 01/01/1900, 1900-01-01, 01.01.1900, 1/1/1900, 1/0/1900, 9999-12-31, 31/12/9999, 12/31/9999',
  ]
    .join(', ')
    .split(', '),
);

/** Whether a cell holds a text or number that only fills the place: N/A, TBD, 9999, 1900-01-01 and the like. */
export function isPlaceholder(cell: Cell): boolean {
  if (typeof cell === 'number') return cell === 9999 || cell === 99_999 || cell === 999_999;
  if (typeof cell !== 'string' || cell.length > 20) return false;
  return FILLERS.has(cell.trim().toLowerCase());
}
