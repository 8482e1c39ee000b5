import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import type { Day } from '../../src/basics/calendar.ts';
import { dayFrom } from '../../src/basics/calendar.ts';
import type { Settings } from '../../src/inventory/settings.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';
import { jointSettings, SETTINGS_SHEET } from '../../src/inventory/settingsRows.ts';
import { forecastSheets } from '../../src/report/forecastSheets.ts';
import type { PlannedInventory } from '../headless.ts';
import { namedSheet, planFile } from '../headless.ts';
import type { SourceFile } from '../host/xlsx/forecastFile.ts';
import { forecastFile } from '../host/xlsx/forecastFile.ts';
import type { WorkbookFile } from '../host/xlsx/workbookFile.ts';
import { readWorkbookFile } from '../host/xlsx/workbookFile.ts';
import { reportFacts } from '../reportFacts.ts';
import { Refusal } from './exit.ts';
import { readBytes, writeFiles } from './files.ts';
import { parsedOptions, valueOr } from './options.ts';
import { planJson } from './planJson.ts';
import { planSummary } from './planSummary.ts';
import { toolVersion } from './toolVersion.ts';

const USAGE = `Plans replacements from an inventory.

  npm run -s plan -- INVENTORY.xlsx|.csv --as-of 2026-06-30 [options]

  --as-of DATE            the day of the plan, such as 2026-06-30 (needed)
  --tab NAME              sheet that holds the inventory (default: the first)
  --records-since DATE    since when every removal is written down; "never" where none is
  --out FORECAST.xlsx     writes the source's sheets and the forecast into a new workbook
  --json PLAN.json        writes the plan's figures
  --settings FILE         settings (JSON)
  --version, --help

Exit 0 done, 1 the input can't be used, 2 wrong usage.
`;

const OPTIONS = {
  'as-of': { type: 'string' },
  tab: { type: 'string' },
  'records-since': { type: 'string' },
  out: { type: 'string' },
  json: { type: 'string' },
  settings: { type: 'string' },
  version: { type: 'boolean' },
  help: { type: 'boolean' },
} as const;

type Given = ReturnType<typeof parsedOptions<typeof OPTIONS>>['values'];

/** The options over the settings file over the workbook's own sheet of settings, key by key. */
function settingsOf(file: WorkbookFile, given: Given): Settings {
  const sheet = namedSheet(file, SETTINGS_SHEET);
  const since = given['records-since'];
  const options = { ...(since && { recordsSince: since }), ...(given.tab && { tab: given.tab }) };
  valueOr(settingsFrom(options), 2);
  const own = given.settings === undefined ? {} : jsonFrom(given.settings);
  return valueOr(jointSettings({ ...own, ...options }, sheet?.rows), 1);
}

function jsonFrom(path: string): object {
  try {
    return JSON.parse(new TextDecoder().decode(readBytes(path))) as object;
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(1, `${path} is no JSON: ${(error as Error).message}`);
  }
}

/** Plans from an inventory file as the arguments say; answers what goes to stdout. */
export async function planCommand(args: readonly string[]): Promise<string> {
  const { values: given, positionals } = parsedOptions(args, OPTIONS);
  if (given.help) return USAGE;
  if (given.version) return `${toolVersion()}\n`;
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) throw new Refusal(2, 'one inventory file is needed; see --help');
  if (given['as-of'] === undefined)
    throw new Refusal(2, '--as-of DATE is needed, such as --as-of 2026-06-30');
  const asOf = valueOr(dayFrom(given['as-of'], 'as-of'), 2);
  const bytes = readBytes(path);
  const file = valueOr(await readWorkbookFile(bytes, basename(path)), 1);
  const settings = settingsOf(file, given);
  const planned = valueOr(planFile(file, settings, asOf), 1);
  const hash = createHash('sha256').update(bytes).digest('hex');
  await write({ path, bytes, file, planned, settings, hash, asOf }, given);
  return planSummary(planned, file.warnings);
}

type Made = {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly file: WorkbookFile;
  readonly planned: PlannedInventory;
  readonly settings: Settings;
  readonly hash: string;
  readonly asOf: Day;
};

async function write(made: Made, given: Given): Promise<void> {
  const { planned, settings, hash: fileHash } = made;
  const files: { path: string; bytes: Uint8Array | string }[] = [];
  if (given.out !== undefined) files.push({ path: given.out, bytes: await workbookBytes(made) });
  if (given.json !== undefined) {
    const json = planJson(planned, { tool: toolVersion(), fileHash, settings });
    files.push({ path: given.json, bytes: `${JSON.stringify(json, null, 2)}\n` });
  }
  writeFiles(files);
}

function workbookBytes(made: Made): Promise<Uint8Array> {
  const { file, path, planned } = made;
  const { inventory, plan, tab } = planned;
  const making = { madeBy: toolVersion(), fileName: basename(path), fileHash: made.hash };
  const source = { ...making, tab, warnings: file.warnings };
  const facts = reportFacts(inventory, plan, made.settings, source);
  const taken = file.sheets.map(({ name }) => name);
  const sheets = forecastSheets(facts, taken);
  return forecastFile(sourceOf(path, made.bytes, file), sheets, made.asOf);
}

function sourceOf(path: string, bytes: Uint8Array, file: WorkbookFile): SourceFile {
  const [sheet] = file.sheets;
  if (!/\.csv$/i.test(path) || sheet === undefined) return { bytes };
  const plain = sheet.rows.map((row) =>
    row.map((cell) => (typeof cell === 'object' && cell !== null ? cell.error : cell)),
  );
  return { sheetName: sheet.name, rows: plain };
}
