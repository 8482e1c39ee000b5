import { firstUnits, plainText } from './shownText.ts';

// Counted in UTF-16 units by every spreadsheet.
const LONGEST_NAME = 31;

// Kept by spreadsheets for themselves.
const RESERVED = 'history';

/**
 * A sheet name that every spreadsheet takes and no sheet of the workbook has yet: at most 31 characters, none of
 * : \ / ? * [ ], no quote at either end, not "History"; a number is put behind it where the name is taken (case
 * doesn't count).
 */
export function freeSheetName(wanted: string, taken: readonly string[]): string {
  const used = new Set([RESERVED, ...taken.map(folded)]);
  const legal = trimmed(plainText(wanted, ' ').replace(/[:\\/?*[\]\t\n\r]/g, ' ')) || 'Sheet';
  for (let number = 1; ; number += 1) {
    const ending = number === 1 ? '' : ` (${number})`;
    const name = trimmed(firstUnits(legal, LONGEST_NAME - ending.length)) + ending;
    if (!used.has(folded(name))) return name;
  }
}

const folded = (name: string): string => name.normalize('NFC').toLowerCase();

const trimmed = (text: string): string => text.replace(/^['\s]+|['\s]+$/g, '');
