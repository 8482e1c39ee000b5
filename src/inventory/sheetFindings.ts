import { cellText } from './cells.ts';
import type { Field } from './fields.ts';
import { FIELD_SPECS } from './fields.ts';
import { checkMakers } from './identifiers.ts';
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
      done: `${header.texts[taken]!} is used; name the other in the setting columns.${field}`,
    });
  }
  for (const { field, column } of match.guessed) {
    context.findings.add(row, {
      kind: 'column guessed by its cells',
      column: header.texts[column] || `column ${column + 1}`,
      given: `its cells look like ${label(field)}`,
      done: `used as ${label(field)}`,
    });
  }
}

function checkHidden(hiddenRows: ReadonlySet<number> | undefined, { lines, context }: SheetReading): void {
  if (hiddenRows === undefined || hiddenRows.size === 0) return;
  const hidden = [...lines.rows].filter((row) => hiddenRows.has(row));
  if (hidden.length === 0) return;
  const given = `${hidden.length} hidden or filtered rows, the first is row ${hidden[0]!}`;
  context.findings.add(hidden[0]!, { kind: 'hidden rows counted', column: '', given, count: hidden.length });
}

const RATING_KIND = /\b(EN|DIN|SAE|IEC|JIS|CCA|MCA|CA)\b/i;

function checkRatings({ lines, context }: SheetReading): void {
  if (!lines.at.has('rating')) return;
  const kinds = new Map<string, number>();
  for (let line = 0; line < lines.count; line += 1) {
    const kind = RATING_KIND.exec(cellText(lines.cell(line, 'rating')))?.[1]?.toUpperCase();
    if (kind !== undefined && !kinds.has(kind)) kinds.set(kind, line);
  }
  if (kinds.size < 2) return;
  const second = [...kinds.values()][1]!;
  const given = `ratings of the kinds ${[...kinds.keys()].join(', ')}`;
  context.findings.add(lines.rows[second]!, {
    kind: 'ratings of mixed kinds',
    column: lines.head('rating'),
    given,
  });
}
