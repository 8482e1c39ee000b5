import type { IWorkbookData } from '@univerjs/core';
import type { Outcome } from '../../../src/basics/outcome.ts';
import type { FileSheet } from '../xlsx/fileSheet.ts';
import type { SavedWorkbook, WorkbookState } from '../xlsx/workbookState.ts';

/** What is remembered of a sheet of the file that was opened. */
export type OriginalSheet = Pick<FileSheet, 'name' | 'tables'> & {
  /** Its filled cells as stretches of a row: row, first column, last column, and so on. */
  readonly filled: Uint32Array;
};

/** A file as the grid takes it in, with what has to be known about it afterwards. */
export type OpenedFile = {
  readonly data: Partial<IWorkbookData>;
  readonly sheets: readonly OriginalSheet[];
  readonly dates1904: boolean;
  readonly isText: boolean;
  readonly warnings: readonly string[];
};

/**
 * Reading and making files: long work on plain data, which a page has done beside its own thread. An aborted signal
 * ends it with the signal's reason.
 */
export type FileWork = {
  /** Reads a file into what the grid loads under the name `id`. */
  readonly read: (
    bytes: Uint8Array,
    fileName: string,
    id: string,
    signal?: AbortSignal,
  ) => Promise<Outcome<OpenedFile>>;
  readonly save: (
    original: Uint8Array | undefined,
    now: WorkbookState,
    as: 'formulas' | 'values',
    signal?: AbortSignal,
  ) => Promise<SavedWorkbook>;
};

/** File work on the caller's own thread: without a screen there is nobody to hold up. */
export const directFileWork: FileWork = {
  read: async (bytes, fileName, id, signal) => {
    const { readForGrid } = await import('./snapshotOfFile.ts');
    const read = await readForGrid(bytes, fileName, id);
    signal?.throwIfAborted();
    return read;
  },
  save: async (original, now, as, signal) => {
    const { savedWorkbook } = await import('../xlsx/save.ts');
    const saved = await savedWorkbook(original, now, as);
    signal?.throwIfAborted();
    return saved;
  },
};
