import type { ICellData, IStyleData } from '@univerjs/core';
import type { FilledColumn, FillRequest, HostCell } from '../sheetHost.ts';
import { CLEARED } from './cellPatch.ts';
import type { LiveSheet } from './live.ts';
import { typedValue } from './sheetCells.ts';
import { NUMBER_CODES } from '../sheetLooks.ts';

/** The cells of new columns: heads and rows look like their neighbours at the left, numbers have their format. */
export function fillPatch(
  live: LiveSheet,
  request: FillRequest,
): {
  readonly head: ReadonlyMap<number, ICellData>;
  readonly cell: (row: number, index: number) => ICellData;
} {
  const { headRow, column, columns } = request;
  const headLook = lookBeside(live, headRow, column);
  const bodyLook = lookBeside(live, headRow + 1, column);
  const looks = columns.map(({ format }) => withFormat(bodyLook, NUMBER_CODES[format]));
  const formulas = columns.map((each) => formulaOf(each, request));
  const head = new Map(
    columns.map((each, index) => [
      column + index,
      { ...typedValue(each.head), ...(headLook !== undefined && { s: headLook }) },
    ]),
  );
  // A column's formula is one cell for all its rows: the grid takes it over without changing it.
  const alike = columns.map((each, index) => {
    const filled = formulas[index] === undefined ? CLEARED : { f: formulas[index] };
    return {
      values: each.values,
      first: withLook(filled, looks[index]),
      rest: withLook(CLEARED, looks[index]),
    };
  });
  return {
    head,
    cell: (row, index) => {
      const { values, first, rest } = alike[index]!;
      if (values !== undefined) return withLook(valueCell(values[row] ?? null), looks[index]);
      return request.as === 'spill' && row > 0 ? rest : first;
    },
  };
}

const withLook = (cell: ICellData, s: IStyleData | undefined): ICellData =>
  s === undefined ? cell : { ...CLEARED, ...cell, s };

/** A value; an error keeps its sentence. */
export function valueCell(value: HostCell): ICellData {
  if (typeof value !== 'object' || value === null) return typedValue(value);
  return { ...typedValue(value.error), custom: { ...value } };
}

// The engine knows [@Volts] by its long name only.
function formulaOf({ formula }: FilledColumn, { as, table = '' }: FillRequest): string | undefined {
  if (formula === undefined) return undefined;
  return `=${as === 'tableColumn' ? withThisRow(formula, table) : formula}`;
}

/** Writes `[@Volts]`, `[@[Rest volts]]` and `Fleet[@Volts]` as `Fleet[[#This Row],[Volts]]`, outside quotes. */
export function withThisRow(formula: string, table: string): string {
  return formula.replace(
    /"(?:[^"]|"")*"|([\p{L}_\\][\p{L}\p{N}_.\\]*)?\[@(?:\[((?:[^[\]']|'.)*)\]|((?:[^[\]']|'.)*))\]/gu,
    (whole: string, named?: string, quoted?: string, bare?: string) =>
      whole.startsWith('"') ? whole : `${named ?? table}[[#This Row],[${quoted ?? bare}]]`,
  );
}

// Without its number format, which is the neighbour's own.
function lookBeside(live: LiveSheet, row: number, column: number): IStyleData | undefined {
  if (column === 0) return undefined;
  const neighbour = live.sheet.getCellRaw(row, column - 1);
  const style = live.facade.getWorkbook().getStyles().getStyleByCell(neighbour) ?? undefined;
  if (style === undefined) return undefined;
  const { n: _, ...look } = style;
  return look;
}

const withFormat = (look: IStyleData | undefined, code: string | undefined): IStyleData | undefined =>
  code === undefined ? look : { ...look, n: { pattern: code } };
