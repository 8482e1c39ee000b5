import { cellText, isBlank, isError, isPlaceholder } from './cells.ts';
import type { Field } from './fields.ts';
import type { Note } from './identifiers.ts';
import { identifierText, stockNumberText } from './identifiers.ts';
import { FIELD_SPECS } from './fields.ts';
import type { Cell } from './inventory.ts';
import type { ReadContext } from './lines.ts';
import { newQuirks } from './quirks.ts';

/** Fields in which N/A, unknown and the like are themselves an answer. */
const SAYS_NOTHING: ReadonlySet<Field> = new Set(['cause', 'status', 'damage', 'retest', 'construction']);

/** A column of texts; equal texts are one string. Identifiers that a spreadsheet has spoilt become findings. */
export function textColumn(context: ReadContext, field: Field): string[] {
  const { kept, block } = context;
  const column = context.at.get(field)!;
  const identifier = FIELD_SPECS[field].kind === 'identifier';
  const width = field === 'serial' ? fixedWidth(context, column) : 0;
  const quirks = newQuirks(context, field);
  const seen = new Map<Cell, string>();
  let filled = 0;
  const texts = kept.map((row) => {
    const cell = block.rows[row]![column];
    if (isBlank(cell)) return '';
    filled += 1;
    const note: Note = (kind, done) => quirks.note(block.rowNumber(row), kind, cell, done);
    const text = seen.get(cell) ?? plainText(cell, field, note);
    if (field === 'stockNumber' && text !== '') return stockNumberText(text, cell, note);
    if (identifier && text !== '') return identifierText(text, cell, width, note);
    if (text !== '') seen.set(cell, text);
    return text;
  });
  quirks.close(filled);
  return texts;
}

function plainText(cell: Cell, field: Field, note: Note): string {
  if (isError(cell)) {
    note('error in the cell', 'counts as empty');
    return '';
  }
  if (SAYS_NOTHING.has(field) || !isPlaceholder(cell)) return cellText(cell);
  note('placeholder', 'counts as empty');
  return '';
}

const SAMPLE = 5000;
const MOST_SERIALS = 0.75;

// Where most of the serials of figures have one length, some with a leading zero, a shorter one has lost its zeros.
function fixedWidth({ kept, block }: ReadContext, column: number): number {
  const lengths = new Map<number, number>();
  let [zeros, figures] = [0, 0];
  for (const row of kept.slice(0, SAMPLE)) {
    const text = cellText(block.rows[row]![column]);
    if (!/^\d+$/.test(text)) continue;
    figures += 1;
    if (text.startsWith('0')) zeros += 1;
    lengths.set(text.length, (lengths.get(text.length) ?? 0) + 1);
  }
  const [width, count] = [...lengths].sort((a, b) => b[1] - a[1])[0] ?? [0, 0];
  return zeros > 0 && count >= MOST_SERIALS * figures ? width : 0;
}
