import type { FontStyle, Workbook } from 'hucre';
import { readXlsx } from 'hucre/xlsx';
import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';
import { freeSheetName } from '../../../src/report/sheetName.ts';
import { csvRows, decodedText } from './csv.ts';
import type { FileSheet } from './fileSheet.ts';
import { sheetsWithoutCells } from './otherSheets.ts';
import { readSheet } from './fileSheet.ts';

export type { FileCell, FileSheet, FileTable } from './fileSheet.ts';

/** A name defined in the workbook, for the sheet `scope` or for all. */
export type FileName = { readonly name: string; readonly refersTo: string; readonly scope?: string };

/** A spreadsheet file as rows of values, with what a reader should know about it. */
export type WorkbookFile = {
  readonly sheets: readonly FileSheet[];
  readonly names: readonly FileName[];
  /** Whether it counts its days from 1904; cells with a date format are converted already. */
  readonly dates1904: boolean;
  /** Whether it is text (.csv), in which nothing tells a date from a number. */
  readonly isText: boolean;
  /** Sentences about what is not as it seems: macros, converted dates, formulas without a value. */
  readonly warnings: readonly string[];
  /** What colours and letters its looks start from, where looks were asked for. */
  readonly base?: LooksBase;
};

/** The theme's colours and the letters of cells that have no look of their own. */
export type LooksBase = { readonly theme: readonly string[]; readonly font?: FontStyle };

type FileOutcome = Outcome<WorkbookFile>;

/**
 * Reads the bytes of an .xlsx or .csv file; any other kind is refused with the way out.
 * @param wanted  whether formulas and looks are read beside the values, for showing the file as it is
 */
export async function readWorkbookFile(
  bytes: Uint8Array,
  name: string,
  wanted: 'values' | 'everything' = 'values',
): Promise<FileOutcome> {
  const ending = /\.([a-z]+)$/i.exec(name)?.[1]?.toLowerCase();
  if (bytes.length === 0) return refused('emptyFile', name);
  if (ending === 'csv') return isZip(bytes) ? refused('csvIsWorkbook', name) : csvFile(bytes, name);
  if (ending === 'xls' || ending === 'xlsb' || ending === 'ods') return refused('oldFileKind', name);
  if (ending !== 'xlsx' && ending !== 'xlsm') return refused('unknownFileKind', name);
  if (isCompound(bytes)) return refused('encryptedFile', name);
  if (!isZip(bytes)) return refused('notAWorkbook', name);
  return readXlsxFile(bytes, name, wanted === 'everything');
}

const refused = (because: Parameters<typeof problem>[1], name: string): FileOutcome =>
  problem('badInput', because, 'the file', name);

const startsWith = (bytes: Uint8Array, start: readonly number[]): boolean =>
  start.every((byte, index) => bytes[index] === byte);

const isZip = (bytes: Uint8Array): boolean => startsWith(bytes, [0x50, 0x4b, 0x03, 0x04]);

/** The older container of office files; an .xlsx inside it has been encrypted with a password. */
const isCompound = (bytes: Uint8Array): boolean => startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0]);

function csvFile(bytes: Uint8Array, name: string): FileOutcome {
  const text = decodedText(bytes);
  // Blanks, separators and line ends are no cells.
  if (!/[^\s,;]/.test(text)) return refused('emptyFile', name);
  const sheet: FileSheet = {
    name: sheetNameFrom(name),
    hidden: false,
    rows: csvRows(text),
    dateCells: new Map(),
    hiddenRows: new Set(),
    hiddenColumns: new Set(),
    filtered: false,
    merges: [],
    tables: [],
    formulasWithoutValue: 0,
  };
  return answer({ sheets: [sheet], names: [], dates1904: false, isText: true, warnings: [] });
}

const sheetNameFrom = (name: string): string =>
  freeSheetName(name.replace(/^.*[\\/]/, '').replace(/\.csv$/i, ''), []);

async function readXlsxFile(bytes: Uint8Array, name: string, looks: boolean): Promise<FileOutcome> {
  const { workbook, others } = await readCells(bytes, looks);
  if (workbook === undefined) return refused('notAWorkbook', name);
  const dates1904 = workbook.dateSystem === '1904';
  const sheets = workbook.sheets.map((sheet) => ({
    ...readSheet(sheet, dates1904),
    ...(looks && { source: sheet }),
  }));
  return answer({
    sheets,
    names: namesOf(workbook),
    dates1904,
    isText: false,
    warnings: [...warningsAbout(sheets, name, dates1904), ...others.map(notShown)],
    ...(looks && { base: baseOf(workbook) }),
  });
}

type CellsRead = { readonly workbook: Workbook | undefined; readonly others: readonly string[] };

// The library refuses a file with a sheet that holds no cells; it can be told to leave that one out.
async function readCells(bytes: Uint8Array, readStyles: boolean): Promise<CellsRead> {
  const whole = await readXlsx(bytes, { readStyles }).catch(() => undefined);
  if (whole !== undefined) return { workbook: whole, others: [] };
  const others = await sheetsWithoutCells(bytes);
  if (others.length === 0) return { workbook: undefined, others };
  const sheets = ({ name }: { readonly name: string }): boolean => !others.includes(name);
  return { workbook: await readXlsx(bytes, { readStyles, sheets }).catch(() => undefined), others };
}

const notShown = (sheet: string): string =>
  `sheet ${sheet} holds a chart or a dialog and no cells: it is not shown here and stays in the file`;

const baseOf = ({ themeColors, defaultFont }: Workbook): LooksBase => ({
  theme: themeColors ?? [],
  ...(defaultFont && { font: defaultFont }),
});

const namesOf = (workbook: Workbook): FileName[] =>
  (workbook.namedRanges ?? []).map(({ name, range, scope }) => ({
    name,
    refersTo: range,
    ...(scope === undefined ? {} : { scope }),
  }));

// The file is as its writer left it: whoever has no spreadsheet program can ask them, or type the values.
const notCalculated = (count: number): string =>
  count === 1
    ? '1 formula has no saved value, so its cell was read as empty; have the file opened and saved in a spreadsheet program, or type the value into the cell'
    : `${count} formulas have no saved value, so their cells were read as empty; have the file opened and saved in a spreadsheet program, or type the values into the cells`;

function warningsAbout(sheets: readonly FileSheet[], name: string, dates1904: boolean): string[] {
  const warnings: string[] = [];
  if (/\.xlsm$/i.test(name)) warnings.push(`${name} holds macros: they are not run and not kept`);
  if (dates1904) {
    warnings.push(
      `${name} counts its dates from 1904: cells with a date format were converted to the 1900 system, plain numbers were left as they are`,
    );
  }
  for (const { name: sheet, formulasWithoutValue: count } of sheets) {
    if (count > 0) {
      warnings.push(`sheet ${sheet}: ${notCalculated(count)}`);
    }
  }
  return warnings;
}
