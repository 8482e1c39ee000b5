import { dayFrom } from '../../src/basics/calendar.ts';
import { directComputing } from '../../taskpane/computing/computing.ts';
import type { HostCell } from '../../taskpane/host/sheetHost.ts';
import { newSession } from '../../taskpane/session.ts';
import type { MemorySheet } from './memoryHost.ts';
import { memoryHost } from './memoryHost.ts';

/** The day of every test of the pane. */
export const AS_OF = (() => {
  const day = dayFrom('2026-06-30', 'as-of');
  if (!day.ok) throw new Error('no day');
  return day.value;
})();

const HEADS = ['Serial', 'Type', 'Site', 'Installed', 'Removed', 'Cause', 'Status'];
const DAYS_PER_MONTH = 30.4375;

/** So many invented batteries; every ninth has failed of age, a few stand in stock. */
export function inventedRows(count: number): HostCell[][] {
  const back = (months: number): number => Math.round(AS_OF - months * DAYS_PER_MONTH);
  return Array.from({ length: count }, (_, index): HostCell[] => {
    const failed = index % 9 === 0;
    const months = failed ? 46 + ((index * 7) % 41) : 3 + ((index * 7) % 52);
    const stock = index % 50 === 1;
    return [
      `NF${100_000 + index}`,
      index % 3 === 0 ? '6T flooded' : '6T AGM',
      index % 2 === 0 ? 'Kaldmoor' : 'Isvarg Pass',
      stock ? null : back(months),
      failed ? back(index % 24) : null,
      failed ? 'failed' : null,
      stock ? 'in stock' : failed ? 'removed' : 'in service',
    ];
  });
}

/** The sheet of an invented inventory. */
export const inventedSheet = (count = 240): MemorySheet => ({
  name: 'Batteries',
  rows: [HEADS, ...inventedRows(count)],
  dateColumns: [3, 4],
});

/** A session over a workbook in memory that computes on the spot. */
export function paneSession(sheets: readonly MemorySheet[] = [inventedSheet()]) {
  const { host, done } = memoryHost(sheets);
  const files: { name: string; bytes: Uint8Array | string }[] = [];
  const session = newSession({
    host,
    computing: directComputing(),
    madeBy: 'Crankbook 0.0.0',
    today: AS_OF,
    timeOfDay: () => 0,
    saveFile: (name, bytes) => void files.push({ name, bytes }),
  });
  return { session, done, files };
}
