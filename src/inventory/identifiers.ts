import { problemText } from '../basics/problemText.ts';
import { makerCode } from '../label/makerCode.ts';
import { stockNumber } from '../label/stockNumber.ts';
import type { FindingKind } from './findingKinds.ts';
import type { Findings } from './findings.ts';
import type { Cell } from './inventory.ts';
import type { Lines } from './lines.ts';

/** Tells of an odd cell: the kind of finding and what was done. */
export type Note = (kind: FindingKind, done?: string) => void;

const SCIENTIFIC = /^\d([.,]\d+)?e[+]?\d+$/i;

/** A number this long has lost digits: spreadsheets keep fifteen. */
const DIGITS_KEPT = 1e15;

/** An identifier as text; one whose digits a spreadsheet has lost counts as empty. `width` = digits that all others have. */
export function identifierText(text: string, cell: Cell, width: number, note: Note): string {
  if (
    SCIENTIFIC.test(text) ||
    (typeof cell === 'number' && (cell >= DIGITS_KEPT || !Number.isInteger(cell)))
  ) {
    note('long number in scientific form');
    return '';
  }
  if (text.length >= width || !/^\d+$/.test(text)) return text;
  const padded = text.padStart(width, '0');
  note('leading zero eaten', `read as ${padded}`);
  return padded;
}

/** A stock number: a number of 13 figures is written as one; what is none stays the text it is. */
export function stockNumberText(text: string, cell: Cell, note: Note): string {
  const plain = identifierText(text, typeof cell === 'number' && cell < DIGITS_KEPT ? text : cell, 0, note);
  if (plain === '') return plain;
  const read = stockNumber(typeof cell === 'number' ? cell : plain);
  if (!read.ok && read.problem.because === 'stockNumberRounded') {
    note('long number in scientific form');
    return '';
  }
  if (!read.ok) note('stock number malformed', `used as the text it is: ${problemText(read.problem)}`);
  if (!read.ok || typeof cell !== 'number') return plain;
  note('stock number stored as a number', `read as ${read.value}`);
  return read.value;
}

/** The maker column holds codes, and not names, where this share of its filled rows are well formed. */
const MOSTLY = 0.6;

/** Reports the makers that are no maker codes, where the column holds maker codes. */
export function checkMakers(lines: Lines, findings: Findings): void {
  const makers = lines.text('maker');
  const problems = new Map<string, string | undefined>();
  let [filled, codes] = [0, 0];
  for (const maker of makers) {
    if (maker === '') continue;
    if (!problems.has(maker)) problems.set(maker, problemOf(maker));
    filled += 1;
    if (problems.get(maker) === undefined && /\d/.test(maker)) codes += 1;
  }
  if (codes < MOSTLY * filled || codes === filled) return;
  makers.forEach((maker, line) => {
    const why = maker === '' ? undefined : problems.get(maker);
    if (why === undefined) return;
    const kind = SCIENTIFIC.test(maker) ? 'long number in scientific form' : 'maker code malformed';
    const done = `used as the text it is: ${why}`;
    findings.add(lines.rows[line]!, {
      kind,
      column: lines.head('maker'),
      given: maker,
      done,
      group: `maker ${maker}`,
    });
  });
}

function problemOf(maker: string): string | undefined {
  const code = makerCode(maker);
  return code.ok ? undefined : problemText(code.problem);
}
