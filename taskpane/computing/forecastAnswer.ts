import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import { forecastSheets } from '../../src/report/forecastSheets.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import type { Source } from '../reportFacts.ts';
import { reportFacts } from '../reportFacts.ts';
import type { Memory } from './memory.ts';

/** What the sheets of a forecast are written with, beside what the computing side remembers. */
export type ForecastRequest = {
  /** Names that the workbook's sheets have already. */
  readonly taken: readonly string[];
  readonly source: Omit<Source, 'fileHash' | 'hashOf'>;
};

/** The sheets of the plan that was made last, with a checksum of the rows that it rests on. */
export async function forecastAnswer(
  memory: Memory,
  { taken, source }: ForecastRequest,
): Promise<Outcome<Sheet[]>> {
  const { inventory, plan, settings } = memory;
  if (inventory === undefined || plan === undefined || settings === undefined)
    throw new Error('nothing has been planned yet');
  const fileHash = await rowsHash(memory);
  const facts = reportFacts(inventory, plan, settings, { ...source, fileHash, hashOf: 'rows' });
  return answer(forecastSheets(facts, taken));
}

/** SHA-256 of the inventory's rows as JSON text. */
async function rowsHash({ sheet }: Memory): Promise<string> {
  const bytes = new TextEncoder().encode(JSON.stringify(sheet?.rows ?? []));
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...hash].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
