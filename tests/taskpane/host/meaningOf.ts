import ExcelJs from 'exceljs';

/** One cell as a person would describe it. */
type CellMeaning = {
  readonly value: unknown;
  readonly style: unknown;
  readonly note: unknown;
  readonly rule: unknown;
};

/** One sheet as a person would describe it: what stands where, how it looks, how it is printed. */
export type SheetMeaning = {
  readonly cells: Readonly<Record<string, CellMeaning>>;
  readonly rest: Readonly<Record<string, unknown>>;
};

/** A file as a reader that is not the writer's and not ours understands it, sheet by sheet. */
export async function meaningOf(bytes: Uint8Array): Promise<Record<string, SheetMeaning>> {
  const book = new ExcelJs.Workbook();
  await book.xlsx.load(bytes.slice().buffer as never);
  return Object.fromEntries(book.worksheets.map((sheet) => [sheet.name, meaningOfSheet(sheet)]));
}

function meaningOfSheet(sheet: ExcelJs.Worksheet): SheetMeaning {
  const cells: Record<string, CellMeaning> = {};
  sheet.eachRow({ includeEmpty: false }, (row) =>
    row.eachCell({ includeEmpty: false }, (cell) => {
      const { value, style, note } = cell;
      cells[cell.address] = {
        value: whole(value),
        style: whole(style),
        note: whole(note),
        rule: whole(cell.dataValidation),
      };
    }),
  );
  const { state, views, pageSetup, headerFooter, properties, autoFilter } = sheet;
  const more = sheet as unknown as {
    conditionalFormattings: unknown;
    _merges: object;
    model: { sheetProtection: unknown };
  };
  const columns = (sheet.columns ?? []).map(({ width, hidden, style }) => ({ width, hidden, style }));
  const rows: unknown[] = [];
  sheet.eachRow({ includeEmpty: true }, ({ height, hidden }) => rows.push({ height, hidden }));
  const rest = {
    ...{ state, views, pageSetup, headerFooter, properties, autoFilter, columns, rows },
    rules: more.conditionalFormattings,
    merges: Object.keys(more._merges),
    pictures: sheet
      .getImages()
      .map(({ range: { tl, br } }) => [tl.row, tl.col, br?.row, br?.col].map((each) => each?.toFixed(3))),
    protection: more.model.sheetProtection,
  };
  return { cells, rest: whole(rest) as SheetMeaning['rest'] };
}

/** Without the reader's own objects and order. */
const whole = (value: unknown): unknown => (value === undefined ? null : JSON.parse(JSON.stringify(value)));
