/** Times of cell functions over 200,000 rows, best of three: `tsx tests/bench/cells.bench.ts`. */
import { functions } from '../../functions/list.ts';

const ROWS = 200_000;
const column = (cell: (row: number) => unknown): unknown[][] =>
  Array.from({ length: ROWS }, (_, row) => [cell(row)]);

const volts = column((row) => 11.9 + (row % 7919) / 8500);
const celsius = column((row) => -20 + (row % 6007) / 100);
const dates = column((row) => 44_000 + (row % 2500));
const reading = column((row) => 500 + (row % 700));
const two = (number: number): string => String(number).padStart(2, '0');
const codes = column((row) => `${two(1 + (row % 12))}${two(15 + (row % 11))}-${row}`);

const CALLS: readonly (readonly [id: string, ...given: unknown[]])[] = [
  ['MANUFACTUREDATE', codes, '2026-06-30', null],
  ['MONTHSINSERVICE', dates, '2026-06-30', null],
  ['STATEOFCHARGE', volts, celsius, null, null],
  ['RECHARGEBY', dates, celsius, null, null, null],
  ['VERDICT', reading, 880, volts, celsius, null, null, null, null],
  ['VERDICTREASON', reading, 880, volts, celsius, null, null, null, null],
];

/** Prints seconds for 200,000 cells, and how they compare with the quickest. */
export function benchCells(): void {
  const seconds = CALLS.map(([id, ...given]) => ({ id, seconds: best(id, given) }));
  const least = Math.min(...seconds.map((each) => each.seconds));
  console.log('cell function, 200,000 rows    seconds   ratio to the quickest');
  for (const each of seconds) {
    console.log(
      `${each.id.padEnd(30)} ${each.seconds.toFixed(2).padStart(7)} ${(each.seconds / least).toFixed(1).padStart(10)}`,
    );
  }
}

function best(id: string, given: readonly unknown[]): number {
  const { run } = functions.find((each) => each.id === id)!;
  const runs = [1, 2, 3].map(() => {
    const begun = performance.now();
    run(...given);
    return (performance.now() - begun) / 1000;
  });
  return Math.min(...runs);
}
