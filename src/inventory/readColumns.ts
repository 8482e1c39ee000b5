import type { Field } from './fields.ts';
import { FIELD_SPECS, FIELDS } from './fields.ts';
import type { Cell } from './inventory.ts';
import type { DateColumn, Lines, ReadContext } from './lines.ts';
import { headOf } from './lines.ts';
import { dateColumn } from './dateColumns.ts';
import { numberColumn } from './numberColumns.ts';
import { textColumn } from './textColumns.ts';

/** The kept rows of a sheet read column by column; what was odd about a cell becomes a finding. */
export function readColumns(context: ReadContext): Lines {
  const count = context.kept.length;
  const [texts, dates, numbers] = [
    new Map<Field, string[]>(),
    new Map<Field, DateColumn>(),
    new Map<Field, Float64Array>(),
  ];
  for (const field of FIELDS) {
    if (!context.at.has(field)) continue;
    const { kind } = FIELD_SPECS[field];
    if (kind === 'date') dates.set(field, dateColumn(context, field));
    else if (kind === 'number') numbers.set(field, numberColumn(context, field));
    else if (kind !== 'code') texts.set(field, textColumn(context, field));
  }
  const [noText, noNumber] = [new Array<string>(count).fill(''), new Float64Array(count).fill(Number.NaN)];
  const noDate = { first: noNumber, last: noNumber };
  return {
    count,
    rows: Int32Array.from(context.kept, (index) => context.block.rowNumber(index)),
    at: context.at,
    head: (field) => headOf(context, field),
    text: (field) => texts.get(field) ?? noText,
    date: (field) => dates.get(field) ?? noDate,
    number: (field) => numbers.get(field) ?? noNumber,
    cell: (line, field) => cellAt(context, line, field),
    isDateCell: (line, field) => context.block.isDateCell(context.kept[line]!, context.at.get(field) ?? -1),
  };
}

function cellAt(context: ReadContext, line: number, field: Field): Cell {
  const column = context.at.get(field);
  return column === undefined ? null : context.block.rows[context.kept[line]!]![column];
}
