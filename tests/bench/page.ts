/**
 * Times of the page in Chromium on a generated inventory, beside what was wished for: `npm run bench:page`, with
 * `-- --rows 100000` for another number of rows and `-- --runs 3` for the middle of several runs. On a machine that
 * does other things too, times grow with its load, which is printed.
 */
import { spawnSync } from 'node:child_process';
import { cpus, loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { dayFromParts } from '../../src/basics/calendar.ts';
import { buildPage } from '../../taskpane/commandLine/buildPage.ts';
import { ROOT } from '../house/sourceFiles.ts';
import type { Bench, OpenedPage } from '../page/builtPage.ts';
import { openPage, startBench } from '../page/builtPage.ts';
import { inventoryFile } from './pageInventory.ts';
import { fillFour, heapOf, openAndRead, planAndWrite, save } from './pageSteps.ts';
import type { Profiled } from './profile.ts';
import { profiled } from './profile.ts';

const FOLDER = `${ROOT}node_modules/.cache/page-bench`;
const OPEN_FOLDER = `${ROOT}node_modules/.cache/page-bench-unshrunk`;

/** What the page should keep to with this many rows; what has no number here has none. */
const TARGET_ROWS = 20_000;
const TARGETS: Readonly<Record<string, number>> = {
  'page ready, s': 3,
  'four columns as spilled formulas, s': 5,
  'four columns as table columns, s': 12,
  'four columns as values, s': 1.5,
  'forecast sheets written, s': 2,
  'heap after spilled formulas, plan and saving, MB': 300,
  'longest task of our own code, ms': 100,
};

const { values: given } = parseArgs({
  options: {
    rows: { type: 'string', default: '20000' },
    runs: { type: 'string', default: '1' },
    only: { type: 'string', default: 'spill,values,table' },
    profile: { type: 'boolean', default: false },
    'no-build': { type: 'boolean', default: false },
  },
});
const [rows, runs] = [Number(given.rows), Number(given.runs)];
const asOf = dayFromParts(2026, 6, 30)!;
const measured = new Map<string, number[]>();
const note = (what: string, value: number): void =>
  void measured.set(what, [...(measured.get(what) ?? []), value]);

type Files = { readonly block: Uint8Array; readonly table: Uint8Array };
type Way = 'spill' | 'values' | 'table';

const FILLED: Readonly<Record<Way, string>> = {
  spill: 'four columns as spilled formulas, s',
  values: 'four columns as values, s',
  table: 'four columns as table columns, s',
};

/** One way through the page; `follow` is told of each step. */
async function goThrough(
  opened: OpenedPage,
  files: Files,
  way: Way,
  tell: (what: string, value: number) => void,
): Promise<void> {
  const { page } = opened;
  const [open, read] = await openAndRead(page, 'inventory.xlsx', way === 'table' ? files.table : files.block);
  tell('file opened, s', open);
  tell('read by the pane, s', read);
  tell(FILLED[way], await fillFour(page, way === 'values' ? 'values' : 'live formulas'));
  if (way !== 'spill') return;
  const [planned, written] = await planAndWrite(page);
  tell('plan shown, s', planned);
  tell('forecast sheets written, s', written);
  tell('saved with formulas, s', await save(page));
  tell('heap after spilled formulas, plan and saving, MB', await heapOf(page));
}

async function run(
  bench: Bench,
  files: Files,
  way: Way,
  follow?: (opened: OpenedPage) => Promise<void>,
): Promise<void> {
  const begun = performance.now();
  const opened = await openPage(bench);
  if (follow !== undefined) await follow(opened);
  else {
    note('page ready, s', (performance.now() - begun) / 1000);
    await goThrough(opened, files, way, note);
  }
  opened.complaints.forEach((said) => console.log(`  the page complained: ${said}`));
  await opened.close();
}

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

function print(): void {
  for (const [what, values] of measured) {
    const [value, target] = [middle(values), rows === TARGET_ROWS ? TARGETS[what] : undefined];
    const digits = what.endsWith(', s') ? 1 : 0;
    const all = values.length > 1 ? `  (${values.map((each) => each.toFixed(digits)).join(' ')})` : '';
    const beside =
      target === undefined
        ? ''
        : `target ${String(target).padStart(4)}, ratio ${(value / target).toFixed(2)}`;
    console.log(what.padEnd(52), value.toFixed(digits).padStart(8), ` ${beside}${all}`);
  }
}

const load = (): string =>
  loadavg()
    .map((each) => each.toFixed(1))
    .join(' ');

/** Builds without shrinking, so that a profile can say whose code ran. */
function buildUnshrunk(): void {
  const args = ['node_modules/webpack/bin/webpack.js', '--mode', 'production', '--config-name', 'page'];
  const settings = ['--no-optimization-minimize', '--output-pathinfo', 'verbose', '--no-cache'];
  const made = spawnSync(process.execPath, [...args, ...settings, '--output-path', OPEN_FOLDER], {
    cwd: ROOT,
  });
  if (made.status !== 0) throw new Error(`the page could not be built:\n${String(made.stdout)}`);
}

function printProfile(way: Way, { ours, any, costliest }: Profiled): void {
  note('longest task of our own code, ms', ours.milliseconds);
  note('longest task, the grid’s included, ms', any.milliseconds);
  console.log(`\n${way}: longest task of ours ${ours.milliseconds.toFixed(0)} ms: ${ours.where}`);
  console.log(`${way}: longest task of all ${any.milliseconds.toFixed(0)} ms: ${any.where}`);
  if (given.profile)
    costliest.slice(0, 40).forEach(([name, seconds]) => console.log(seconds.toFixed(2).padStart(8), name));
}

async function main(): Promise<void> {
  const ways = given.only.split(',') as Way[];
  const files = { block: await inventoryFile(rows, asOf), table: await inventoryFile(rows, asOf, 'Fleet') };
  console.log(
    `${rows.toLocaleString('en')} rows of 12 columns, runs: ${runs}; cores: ${cpus().length}, load: ${load()}`,
  );
  if (!given['no-build']) {
    const failure = await buildPage(FOLDER);
    if (failure !== undefined) throw new Error(failure);
    buildUnshrunk();
  }
  if (runs > 0) {
    const bench = await startBench(FOLDER);
    for (let count = 0; count < runs; count += 1) for (const way of ways) await run(bench, files, way);
    await bench.stop();
  }
  const followed = await startBench(OPEN_FOLDER);
  for (const way of ways)
    await run(followed, files, way, async (opened) =>
      printProfile(
        way,
        await profiled(opened.page, OPEN_FOLDER, () => goThrough(opened, files, way, () => undefined)),
      ),
    );
  await followed.stop();
  console.log();
  print();
  console.log(`load at the end: ${load()}`);
}

await main();
