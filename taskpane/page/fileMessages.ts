import type { IWorkbookData, IWorksheetData } from '@univerjs/core';
import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import type { FileWork, OpenedFile } from '../host/workbook/fileWork.ts';
import { directFileWork } from '../host/workbook/fileWork.ts';
import type { SavedWorkbook } from '../host/xlsx/workbookState.ts';

/** What the page has done by its worker for files. */
export type FileQuestion =
  | { readonly kind: 'read'; readonly request: Parameters<FileWork['read']> }
  | { readonly kind: 'save'; readonly request: Parameters<FileWork['save']> };

/** The rows of a sheet by their numbers, as lists: only lists cross in blocks. */
type SheetRows = {
  readonly cells: readonly [string, unknown][];
  readonly rows: readonly [string, unknown][];
};

/** A file that was read, its rows apart from the rest. */
type PackedFile = { readonly file: OpenedFile; readonly rows: Readonly<Record<string, SheetRows>> };

/** An answer as it crosses. */
export type FileAnswer = { readonly read: Outcome<PackedFile> } | { readonly saved: SavedWorkbook };

type Answer = { readonly read: Outcome<OpenedFile> } | { readonly saved: SavedWorkbook };

/** Answers a question where it is asked. */
export async function answerFor(question: FileQuestion): Promise<Answer> {
  return question.kind === 'read'
    ? { read: await directFileWork.read(...question.request) }
    : { saved: await directFileWork.save(...question.request) };
}

/** Makes an answer ready to cross in blocks. */
export function packed(given: Answer): FileAnswer {
  if ('saved' in given || !given.read.ok) return given as FileAnswer;
  const file = given.read.value;
  const sheets = Object.entries(file.data.sheets ?? {});
  const rows = sheets.map(([id, { cellData, rowData }]): [string, SheetRows] => [
    id,
    { cells: Object.entries(cellData ?? {}), rows: Object.entries(rowData ?? {}) },
  ]);
  const bare = sheets.map(([id, { cellData: _, rowData: __, ...sheet }]) => [id, sheet] as const);
  const data = { ...file.data, sheets: Object.fromEntries(bare) };
  return { read: answer({ file: { ...file, data }, rows: Object.fromEntries(rows) }) };
}

/** The buffers of an answer, which move to the page without a copy. */
export function handedOver(given: FileAnswer): Transferable[] {
  if ('saved' in given) return [given.saved.bytes.buffer as ArrayBuffer];
  return given.read.ok ? given.read.value.file.sheets.map(({ filled }) => filled.buffer as ArrayBuffer) : [];
}

/** A file whose rows have come, put together again. */
export function unpacked({ file, rows }: PackedFile): OpenedFile {
  const sheets = Object.entries(file.data.sheets ?? {}).map(
    ([id, sheet]): [string, Partial<IWorksheetData>] => {
      const own = rows[id]!;
      return [
        id,
        {
          ...sheet,
          cellData: Object.fromEntries(own.cells) as never,
          rowData: Object.fromEntries(own.rows) as never,
        },
      ];
    },
  );
  const data: Partial<IWorkbookData> = { ...file.data, sheets: Object.fromEntries(sheets) };
  return { ...file, data };
}
