import { fileURLToPath } from 'node:url';
import { runCommand } from './exit.ts';
import { planCommand } from './planCommand.ts';

const DEMO = fileURLToPath(new URL('../../docs/demo/norrfell-inventory.xlsx', import.meta.url));
const RESULT = 'norrfell-forecast.xlsx';
const PLAN = [DEMO, '--as-of', '2026-06-30', '--records-since', '2021-04-01', '--out', RESULT];

/** A newcomer's first look: plans the demonstration inventory and writes its forecast workbook. */
async function start(): Promise<string> {
  const summary = await planCommand(PLAN);
  return `The Norrfell winter-road and rescue service (fictional), docs/demo/norrfell-inventory.xlsx\n\n${summary}\nWritten: ${RESULT}. Open it in any spreadsheet program.\n`;
}

void runCommand(start);
