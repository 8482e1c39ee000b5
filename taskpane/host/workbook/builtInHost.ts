import { writeXlsx } from 'hucre/xlsx';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer } from '../../../src/basics/outcome.ts';
import type { Sheet } from '../../../src/report/sheet.ts';
import type { CellAt, SheetBlock, SheetHost, Work, WorkbookInfo } from '../sheetHost.ts';
import { addLiveSheets } from './adding.ts';
import { trackChanges } from './changes.ts';
import { chartsOn } from './charts.ts';
import type { CellDescription } from './describing.ts';
import { describeLive, sentenceLive } from './describing.ts';
import type { StartedWorkbook } from './engine.ts';
import { fillColumns } from './fill.ts';
import type { FileWork } from './fileWork.ts';
import { directFileWork } from './fileWork.ts';
import { selectedBlock, sheetInfos } from './info.ts';
import { liveSheet } from './live.ts';
import { nameLiveCell, namedLiveCell } from './names.ts';
import { nextBookId, openEmpty, showFile } from './opening.ts';
import { readLiveBlock } from './reading.ts';
import { appendRecord } from './records.ts';
import { writeOverSheet } from './replacing.ts';
import { selectLive, watchSelection } from './selecting.ts';
import { partOf } from './turns.ts';
import { namesForFile, sheetForFile } from '../xlsx/sheetFile.ts';

/** Whether our own functions are saved as formulas for the add-in, or as their answers. */
export type SaveAs = 'formulas' | 'values';

/** A saved file, its name, and what of the original it does not have any more, in plain words. */
export type Saved = {
  readonly bytes: Uint8Array;
  readonly fileName: string;
  readonly lost: readonly string[];
};

/** The built-in workbook: what the pane asks of it, and what the page around it needs. */
export type BuiltIn = SheetHost & {
  /** Opens a file in place of what is open; what can't be read leaves that open. */
  readonly open: (
    bytes: Uint8Array,
    fileName: string,
    work?: Work,
  ) => Promise<Outcome<{ readonly warnings: readonly string[] }>>;
  /** What is open as an .xlsx file. */
  readonly save: (as: SaveAs, work?: Work) => Promise<Outcome<Saved>>;
  /** What the error in a cell says; empty where there is none, or none is known. */
  readonly sentenceAt: (at: CellAt) => string;
  /** A cell in words, for those who can't see it. */
  readonly describeAt: (at: CellAt) => CellDescription | undefined;
  /** Tells `listener` of every change of what is open, calculated ones included; the answer ends that. */
  readonly onChange: (listener: () => void) => () => void;
  /** Ends the listening; the engine itself goes on. */
  readonly dispose: () => void;
};

/** What the host is given beside the engine. */
export type Surroundings = {
  /** Gives a file to the user. */
  readonly download: (bytes: Uint8Array, fileName: string) => void;
  /** Reads and makes files; on the caller's own thread where it is left out. */
  readonly fileWork?: FileWork;
};

type Opened = {
  fileName: string;
  original: Uint8Array | undefined;
  warnings: readonly string[];
  dates1904: boolean;
};

const NEW_NAME = 'workbook.xlsx';

/** Makes the built-in workbook, in a browser or without a screen, from a started engine. */
export function builtInHost(started: StartedWorkbook, surroundings: Surroundings): BuiltIn {
  const { download, fileWork = directFileWork } = surroundings;
  const opened: Opened = { fileName: NEW_NAME, original: undefined, warnings: [], dates1904: false };
  if (started.api.getActiveWorkbook() === null) openEmpty(started);
  const changes = trackChanges(started);
  changes.begin(undefined);
  const charts = chartsOn(started);
  changes.onChange(charts.refresh);
  const added = (sheet: Sheet, id: string): void => {
    changes.drawn(sheet, id);
    charts.add(sheet, id);
  };
  const open: BuiltIn['open'] = async (bytes, fileName, work) => {
    const read = await fileWork.read(bytes, fileName, nextBookId(), work?.signal);
    if (!read.ok) return read;
    work?.signal.throwIfAborted();
    changes.pause();
    charts.forget();
    await showFile(started, read.value, (share) => work?.progress(share));
    const { warnings, dates1904, isText } = read.value;
    Object.assign(opened, { fileName, warnings, dates1904, original: isText ? undefined : bytes });
    changes.begin(isText ? undefined : read.value.sheets);
    return answer({ warnings });
  };
  return {
    kind: 'builtIn',
    workbook: () => workbookInfo(started, opened),
    readBlock: (at, work) => readLiveBlock(started, at, work),
    select: async (at) => selectLive(started, at),
    onSelect: (listener) => watchSelection(started, listener),
    addSheets: (sheets, work) => addLiveSheets(started, sheets, work, added),
    replaceSheet: (sheet, work) =>
      liveSheet(started, sheet.name) === undefined
        ? addLiveSheets(started, [sheet], work, added)
        : writeOverSheet(started, sheet, work),
    newWorkbook: async (fileName, sheets) => {
      const written = { sheets: sheets.map(sheetForFile), namedRanges: sheets.flatMap(namesForFile) };
      download(await writeXlsx(written), withEnding(fileName));
      return answer(undefined);
    },
    workInCopy: async () => {
      opened.fileName = copyName(opened.fileName);
      return answer(opened.fileName);
    },
    fill: (request, work) => fillColumns(started, request, work),
    appendRow: (sheet, heads, cells) => appendRecord(started, sheet, heads, cells, added),
    nameCell: (place) => nameLiveCell(started, place),
    namedCell: async (name) => answer(namedLiveCell(started, name)),
    // The cell functions are part of this workbook: there is nothing to mend.
    repairFormulas: async () => answer(0),
    open,
    save: async (as, work) => {
      const state = await changes.state(partOf(work, 0, 0.5));
      work?.progress(0.5);
      const { bytes, lost } = await fileWork.save(opened.original, state, as, work?.signal);
      return answer({ bytes, lost, fileName: withEnding(opened.fileName) });
    },
    sentenceAt: (at) => sentenceLive(started, at),
    describeAt: (at) => describeLive(started, at),
    onChange: changes.onChange,
    dispose: () => {
      charts.forget();
      changes.dispose();
    },
  };
}

async function workbookInfo(started: StartedWorkbook, opened: Opened): Promise<Outcome<WorkbookInfo>> {
  const { fileName, warnings, dates1904 } = opened;
  const sheets = await sheetInfos(started);
  const selected: SheetBlock | undefined = selectedBlock(started);
  return answer({ fileName, sheets, selected, dates1904, warnings });
}

// Whatever it was read from, it is saved as .xlsx.
const withEnding = (name: string): string => `${name.replace(/\.(xlsx|xlsm|csv)$/i, '')}.xlsx`;

const copyName = (name: string): string => withEnding(`${name.replace(/\.(xlsx|xlsm|csv)$/i, '')} copy`);
