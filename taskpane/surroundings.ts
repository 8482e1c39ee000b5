import packageFile from '../package.json' with { type: 'json' };
import { dayFromParts } from '../src/basics/calendar.ts';
import { answer } from '../src/basics/outcome.ts';
import { workerComputing } from './computing/workerComputing.ts';
import { giveFile } from './giveFile.ts';
import type { SheetHost } from './host/sheetHost.ts';
import type { Surroundings } from './session.ts';

const MINUTES_OF_DAY = 24 * 60;

/** What the machine does for the pane, beside whichever spreadsheet: its clock, its worker, its files. */
export function surroundingsOf(host: SheetHost): Surroundings {
  const now = new Date();
  return {
    host,
    computing: workerComputing(
      () => new Worker(/* webpackChunkName: "worker" */ new URL('./computing/worker.ts', import.meta.url)),
    ),
    madeBy: `Crankbook ${packageFile.version}`,
    today: dayFromParts(now.getFullYear(), now.getMonth() + 1, now.getDate())!,
    timeOfDay,
    saveFile: giveFile,
    sheetOfFile,
  };
}

function timeOfDay(): number {
  const now = new Date();
  return (now.getHours() * 60 + now.getMinutes()) / MINUTES_OF_DAY;
}

const sheetOfFile: NonNullable<Surroundings['sheetOfFile']> = async ({ name, bytes }, wanted) => {
  const { readWorkbookFile } = await import(/* webpackChunkName: "files" */ './host/xlsx/workbookFile.ts');
  const read = await readWorkbookFile(bytes, name);
  if (!read.ok) return read;
  return answer(read.value.sheets.find((sheet) => sheet.name.toLowerCase() === wanted.toLowerCase())?.rows);
};
