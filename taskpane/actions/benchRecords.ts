import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import { CHARGE_HEADS, TEST_HEADS } from '../../src/inventory/benchRecord.ts';
import type { Cell } from '../../src/inventory/inventory.ts';
import type { Format, Sheet, SheetCell } from '../../src/report/sheet.ts';
import type { KeptRecord } from '../bench/benchState.ts';
import { emptyRecords } from '../host/recordSheet.ts';
import type { HostCell } from '../host/sheetHost.ts';
import type { Session } from '../session.ts';
import { writtenApart } from '../text/paneText.ts';
import { GIVING_RECORDS, keptSentence, RECORDING, recordedSentence } from '../text/benchText.ts';
import { homeChosen } from './home.ts';
import { underway } from './underway.ts';

/** Sheets of records and their heads. */
const HEADS: Readonly<Record<KeptRecord['sheet'], readonly string[]>> = {
  Tests: TEST_HEADS,
  Charges: CHARGE_HEADS,
};

/**
 * Puts a row on record where the user wants it: under the last one in the workbook that is open, or, where nothing may
 * be written there, here until it is given as a workbook of its own.
 * @returns whether it is on record
 */
export async function putOnRecord(
  session: Session,
  sheet: KeptRecord['sheet'],
  serial: string,
  cells: readonly Cell[],
): Promise<boolean> {
  const home = await homeChosen(session);
  if (home === undefined) return false;
  if (home === 'own') return keep(session, { sheet, cells }, serial);
  const row = cells.map((value, column) => ({
    value: value as HostCell,
    format: formatOf(HEADS[sheet][column]!, value),
  }));
  const { isWriting } = session.bench;
  // A button pressed twice means one row.
  if (isWriting.value) return false;
  isWriting.value = true;
  const written = await underway(session, RECORDING, async (): Promise<Outcome<{ row: number }>> => {
    const at = await session.host.appendRow(sheet, HEADS[sheet], row);
    return at.ok ? answer({ row: at.value }) : at;
  }).finally(() => (isWriting.value = false));
  if (written === undefined) return false;
  session.notice.value = { kind: 'done', text: recordedSentence(sheet, serial, written.row + 1) };
  return true;
}

// Identifiers are texts and must stay texts.
const formatOf = (head: string, value: Cell): Format =>
  head === 'Date' ? 'date' : typeof value === 'number' ? 'plain' : 'text';

function keep({ bench, notice }: Session, record: KeptRecord, serial: string): boolean {
  bench.kept.value = [...bench.kept.value, record];
  notice.value = { kind: 'done', text: keptSentence(record.sheet, serial, bench.kept.value.length) };
  return true;
}

/** Gives the records that are kept here as a workbook of its own; they are kept no longer then. */
export async function giveRecords(session: Session): Promise<void> {
  const { bench, host, workbook, notice } = session;
  const records = bench.kept.value;
  const names = (['Tests', 'Charges'] as const).filter((name) => records.some(({ sheet }) => sheet === name));
  const file = `${(workbook.value?.fileName ?? 'Crankbook').replace(/\.[^.]*$/, '')} bench records.xlsx`;
  const rowsOf = (name: string) => records.filter(({ sheet }) => sheet === name).map(({ cells }) => cells);
  const given = await underway(session, GIVING_RECORDS, async () => {
    const made = await host.newWorkbook(
      file,
      names.map((name) => recordsSheet(name, rowsOf(name))),
    );
    return made.ok ? answer(true) : made;
  });
  if (given !== true) return;
  bench.kept.value = bench.kept.value.slice(records.length);
  notice.value = { kind: 'done', text: writtenApart(file, names) };
}

function recordsSheet(name: KeptRecord['sheet'], records: readonly (readonly Cell[])[]): Sheet {
  const heads = HEADS[name];
  const cellOf = (value: Cell, column: number): SheetCell => ({
    value: (value ?? null) as SheetCell['value'],
    meaning: 'body',
    format: formatOf(heads[column]!, value),
  });
  const empty = emptyRecords(name, heads);
  return { ...empty, rows: [...empty.rows, ...records.map((cells) => cells.map(cellOf))] };
}
