import { cellText } from './cells.ts';
import type { Field } from './fields.ts';
import { FIELD_SPECS } from './fields.ts';
import { checkMakers } from './identifiers.ts';
import type { Finding } from './inventory.ts';
import type { InventoryRequest, SheetReading } from './readInventory.ts';

/** What is to be checked about the sheet as a whole: its columns, hidden rows, date system and kinds of ratings. */
export function sheetFindings({ sheet }: InventoryRequest, reading: SheetReading): void {
  checkColumns(reading);
  checkHidden(sheet.hiddenRows, reading);
  if (sheet.from1904 === true) {
    const row = reading.block.rowNumber(0);
    reading.context.findings.add(row, {
      kind: 'workbook counts from 1904',
      column: '',
      given: 'days counted from 1904',
    });
  }
  checkRatings(reading);
  checkMakers(reading.lines, reading.context.findings);
}

function checkColumns({ match, header, block, context }: SheetReading): void {
  const row = block.rowNumber(header.last);
  const label = (field: Field): string => FIELD_SPECS[field].label;
  for (const { field, taken, other } of match.rivals) {
    context.findings.add(row, {
      kind: 'two columns fit one field',
      column: header.texts[other]!,
      given: `${header.texts[taken]!} and ${header.texts[other]!} both fit ${label(field)}`,
      subject: { about: 'column', field, heads: [header.texts[taken]!, header.texts[other]!] },
      group: `the column of ${label(field)}`,
      done: `${header.texts[taken]!} is used; say so if the other is right`,
      setting: `columns.${field}`,
    });
  }
  for (const { field, column } of match.guessed) {
    context.findings.add(row, {
      kind: 'column guessed by its cells',
      column: header.texts[column] || `column ${column + 1}`,
      given: `its cells look like ${label(field)}`,
      done: `used as ${label(field)}`,
      setting: `columns.${field}`,
      ...subjectOf(field, header.texts[column]!),
    });
  }
}

// A column without a head can't be named by it.
const subjectOf = (field: Field, head: string): Pick<Finding, 'subject' | 'group'> =>
  head === ''
    ? {}
    : {
        subject: { about: 'column', field, heads: [head] },
        group: `the column of ${FIELD_SPECS[field].label}`,
      };

function checkHidden(hiddenRows: ReadonlySet<number> | undefined, { lines, context }: SheetReading): void {
  if (hiddenRows === undefined || hiddenRows.size === 0) return;
  const hidden = [...lines.rows].filter((row) => hiddenRows.has(row));
  if (hidden.length === 0) return;
  const given = `${hidden.length} hidden or filtered rows, the first is row ${hidden[0]!}`;
  context.findings.add(hidden[0]!, {
    kind: 'hidden rows counted',
    column: '',
    given,
    count: hidden.length,
    setting: 'visibleOnly',
  });
}

const RATING_KIND = /(?:\b|\d)(EN|DIN|SAE|IEC|JIS|CCA|MCA)\b/i;

// Each row whose rating is of another kind than most.
function checkRatings({ lines, context }: SheetReading): void {
  if (!lines.at.has('rating')) return;
  const ofColumn = ratingKind(lines.head('rating'));
  const kinds = Array.from({ length: lines.count }, (_, line) => {
    const text = cellText(lines.cell(line, 'rating'));
    return text === '' ? undefined : (ratingKind(text) ?? ofColumn);
  });
  const counts = new Map<string, number>();
  for (const kind of kinds) if (kind !== undefined) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const [usual] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [];
  kinds.forEach((kind, line) => {
    if (kind === undefined || kind === usual) return;
    const given = `${cellText(lines.cell(line, 'rating'))}; most are ${usual}`;
    const found = { kind: 'ratings of mixed kinds', column: lines.head('rating'), given } as const;
    context.findings.add(lines.rows[line]!, { ...found, group: `ratings in ${kind}` });
  });
}

const ratingKind = (text: string): string | undefined => {
  const kind = RATING_KIND.exec(text)?.[1]?.toUpperCase();
  return kind === 'CCA' ? 'SAE' : kind;
};
