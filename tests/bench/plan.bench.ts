/** Times of the whole plan command on generated inventories: `tsx tests/bench/plan.bench.ts`. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dayFromParts, isoDay } from '../../src/basics/calendar.ts';
import { planCommand } from '../../taskpane/commandLine/planCommand.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

const AS_OF = dayFromParts(2026, 6, 30)!;
const DAYS_PER_MONTH = 30.4375;
const HEADS =
  'Serial,Maker,Type,Manufacture code,Site,Vehicle,Set,Installed,Removed,Removal reason,Rest volts,Temp C,CCA,Least,Tested on';

function inventory(rows: number): string {
  const uniform = uniformNumbers(rows);
  const two = (number: number): string => String(number).padStart(2, '0');
  const lines = Array.from({ length: rows }, (_, row) => {
    const installed = AS_OF - 1 - Math.floor(3800 * uniform());
    const removed = Math.floor(installed + weibullLife(uniform, 2.4, 62, 0) * DAYS_PER_MONTH);
    const gone = removed < AS_OF;
    const [year, month] = isoDay(installed - 60).split('-') as [string, string];
    const code = `${month}${two(Number(year) % 100)}-${row % 997}`;
    const end = gone
      ? `${isoDay(removed)},${row % 4 === 0 ? 'vehicle sold' : 'failed'},,,,,`
      : `,,${(12 + 0.9 * uniform()).toFixed(2)},${Math.floor(30 * uniform())},${500 + Math.floor(700 * uniform())},880,${isoDay(AS_OF - 100)}`;
    return `S${row},9ZZ98,6T AGM,${code},Site ${row % 23},V${Math.floor(row / 4)},A,${isoDay(installed)},${end}`;
  });
  return [HEADS, ...lines].join('\n');
}

/** Prints seconds for 20,000 and 200,000 rows, forecast workbook written, and how time grows with rows. */
export async function benchPlan(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const seconds: number[] = [];
  for (const rows of [20_000, 200_000]) {
    const file = join(folder, `${rows}.csv`);
    writeFileSync(file, inventory(rows));
    const begun = performance.now();
    await planCommand([
      file,
      '--as-of',
      isoDay(AS_OF),
      '--records-since',
      '2016-01-01',
      '--out',
      join(folder, 'out.xlsx'),
    ]);
    seconds.push((performance.now() - begun) / 1000);
    console.log(
      `plan, ${rows.toLocaleString('en')} rows, workbook written`.padEnd(68),
      `${seconds.at(-1)!.toFixed(1).padStart(6)} s`,
    );
  }
  console.log('  ten times the rows took', (seconds[1]! / seconds[0]!).toFixed(1), 'times as long');
}

if (process.argv[1]?.endsWith('plan.bench.ts') === true) void benchPlan();
