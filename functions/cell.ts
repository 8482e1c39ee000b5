import type { Outcome } from '../src/basics/outcome.ts';
import { andThen, answer, problem } from '../src/basics/outcome.ts';
import { problemText } from '../src/basics/problemText.ts';
import { celsiusFromFahrenheit, temperatureUnit } from '../src/basics/units.ts';

/** An error that a cell shows: its code and the sentence beside it. Hosts turn it into their own kind. */
export type CellError = { readonly error: string; readonly message: string };

/** What a cell can hold after a function has answered. */
export type Cell = number | string | boolean | CellError;

/** What arrives for a parameter: a block of cells, one value, or nothing (left out). */
type Given = unknown;

/** One formula's inputs: `columns` are taken cell by cell, `singles` once for all. */
export type Inputs = {
  readonly columns: readonly Given[];
  readonly singles?: readonly Given[];
  /** When the first column's cell counts as empty; a test for volts or codes also takes 0 as empty. */
  readonly blank?: (first: unknown) => boolean;
};

/** What a cell says where our own code has a fault. */
export const BUG = 'no answer could be computed: please report this formula and its inputs';

/** Whether a value is an error that a cell shows. */
export function isCellError(value: unknown): value is CellError {
  return typeof value === 'object' && value !== null && 'error' in value && 'message' in value;
}

/** Empty: null, left out, or text of blanks. */
export function isBlank(value: unknown): boolean {
  return value === null || value === undefined || (typeof value === 'string' && value.trim() === '');
}

/** Empty, or 0 where a 0 can't be meant (hosts disagree on how an empty cell arrives). */
export function isBlankOrZero(value: unknown): boolean {
  return value === 0 || isBlank(value);
}

/** A number from a cell. Text is refused, even where it looks like a number. */
export function numberFrom(value: unknown, argument: string): Outcome<number> {
  if (isBlank(value)) return problem('missing', 'missing', argument);
  if (typeof value === 'number' && Number.isFinite(value)) return answer(value);
  return problem('badInput', 'notANumber', argument, value);
}

/** A temperature in degrees Celsius, or undefined where the cell is empty (25 C is never assumed here). */
export function celsiusFrom(value: unknown, unit: unknown): Outcome<number | undefined> {
  return andThen(temperatureUnit(unit), (scale) => {
    if (isBlank(value)) return answer<number | undefined>(undefined);
    return andThen(numberFrom(value, 'temperature'), (degrees) =>
      answer<number | undefined>(scale === 'F' ? celsiusFromFahrenheit(degrees) : degrees),
    );
  });
}

/** The error cell for a problem: #N/A where there is not enough to answer, else #VALUE!. */
export function errorCell(outcome: { readonly problem: Parameters<typeof problemText>[0] }): CellError {
  const { kind } = outcome.problem;
  const error = kind === 'notEnoughData' || kind === 'noConvergence' ? '#N/A' : '#VALUE!';
  return { error, message: problemText(outcome.problem) };
}

/** One answer for each cell of the columns' common shape; a bad cell spoils its own answer only. */
export function eachCell(inputs: Inputs, compute: (cells: readonly unknown[]) => Outcome<Cell>): Cell[][] {
  return overBlocks(inputs, (blocks, rows, columns) =>
    grid(rows, columns, (row, column) =>
      guarded(
        blocks.map((block) => at(block, row, column)),
        inputs.blank,
        compute,
      ),
    ),
  );
}

/** One row of `width` answers for each row of the one-column inputs. */
export function eachRow(
  inputs: Inputs,
  width: number,
  compute: (cells: readonly unknown[]) => Outcome<readonly Cell[]>,
): Cell[][] {
  return overBlocks(inputs, (blocks, rows, columns) => {
    if (columns > 1)
      return wholeError(problem('badInput', 'notOneColumn', 'the range', undefined, { more: { columns } }));
    return Array.from({ length: rows }, (_, row) => {
      let answers: readonly Cell[] = [];
      const cells = blocks.map((block) => at(block, row, 0));
      const first = guarded(cells, inputs.blank, (given) =>
        andThen(compute(given), (values) => {
          answers = values;
          return answer<Cell>(values[0] ?? '');
        }),
      );
      return Array.from({ length: width }, (_, column) => answers[column] ?? first);
    });
  });
}

/** One answer for each row of a block whose rows belong together. */
export function eachBlockRow(block: Given, compute: (cells: readonly unknown[]) => Outcome<Cell>): Cell[][] {
  return asBlock(block).map((row) => {
    const error = row.find(isCellError);
    if (error !== undefined) return [error];
    return [row.every(isBlank) ? '' : settled(() => compute(row))];
  });
}

/** A table with its header row, or one error cell. */
export function table(
  inputs: readonly Given[],
  compute: () => Outcome<readonly (readonly Cell[])[]>,
): Cell[][] {
  const error = inputs.flatMap((input) => asBlock(input).flat()).find(isCellError);
  if (error !== undefined) return [[error]];
  let rows: readonly (readonly Cell[])[] = [];
  const first = settled(() =>
    andThen(compute(), (value) => {
      rows = value;
      return answer<Cell>('');
    }),
  );
  return isCellError(first) ? [[first]] : rows.map((row) => row.map(finite));
}

/** A parameter as a block of rows and columns, however the host handed it over. */
export function asBlock(given: Given): readonly (readonly unknown[])[] {
  if (!Array.isArray(given)) return [[given ?? null]];
  return given.length === 0 ? [[null]] : given.map((row) => (Array.isArray(row) ? row : [row]));
}

type Block = ReturnType<typeof asBlock>;

function overBlocks(
  inputs: Inputs,
  build: (blocks: Block[], rows: number, columns: number) => Cell[][],
): Cell[][] {
  const single = (inputs.singles ?? []).flatMap((given) => asBlock(given).flat()).find(isCellError);
  if (single !== undefined) return [[single]];
  const blocks = inputs.columns.map(asBlock);
  const large = blocks.filter((block) => block.length > 1 || (block[0]?.length ?? 0) > 1);
  const [first, ...others] = large;
  const odd = others.find((block) => shape(block) !== shape(first!));
  if (first !== undefined && odd !== undefined) {
    return wholeError(
      problem('badInput', 'shapesDiffer', 'the ranges', undefined, {
        more: { first: shape(first), second: shape(odd) },
      }),
    );
  }
  return build(blocks, first?.length ?? 1, first?.[0]?.length ?? 1);
}

const shape = (block: Block): string => `${block.length} x ${block[0]?.length ?? 0}`;

const wholeError = (outcome: Parameters<typeof errorCell>[0]): Cell[][] => [[errorCell(outcome)]];

const at = (block: Block, row: number, column: number): unknown =>
  block.length === 1 && block[0]!.length === 1 ? block[0]![0] : block[row]?.[column];

function grid(rows: number, columns: number, cell: (row: number, column: number) => Cell): Cell[][] {
  const answers: Cell[][] = new Array(rows);
  for (let row = 0; row < rows; row += 1) {
    const line: Cell[] = new Array(columns);
    for (let column = 0; column < columns; column += 1) line[column] = cell(row, column);
    answers[row] = line;
  }
  return answers;
}

function guarded(
  cells: readonly unknown[],
  blank: Inputs['blank'] = isBlank,
  compute: (cells: readonly unknown[]) => Outcome<Cell>,
): Cell {
  const error = cells.find(isCellError);
  if (error !== undefined) return error;
  return blank(cells[0]) ? '' : settled(() => compute(cells));
}

// A fault in our own code must never reach a sheet as a thrown error or as NaN, which hosts show as 0.
function settled(compute: () => Outcome<Cell>): Cell {
  try {
    const outcome = compute();
    return outcome.ok ? finite(outcome.value) : errorCell(outcome);
  } catch {
    return { error: '#VALUE!', message: BUG };
  }
}

const finite = (value: Cell): Cell =>
  typeof value === 'number' && !Number.isFinite(value) ? { error: '#VALUE!', message: BUG } : value;
