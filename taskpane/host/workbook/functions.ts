import type * as EngineModule from '@univerjs/engine-formula';
import type { Cell, CellError } from '../../../functions/cell.ts';
import { BUG, errorCell, isCellError } from '../../../functions/cell.ts';
import type { CellFunction } from '../../../functions/list.ts';
import { NAMESPACE } from '../../../functions/list.ts';
import { problem } from '../../../src/basics/outcome.ts';
import type { Sentences } from './sentences.ts';
import { sentenceIn } from './sentences.ts';

/** The formula engine; passed in, for a browser and Node load it in different ways. */
export type Engine = typeof EngineModule;

type EngineValue = EngineModule.BaseValueObject;
/** A function of the engine, as a class and with the name under which formulas call it. */
export type FunctionClass = new (name: string) => EngineModule.BaseFunction;
export type NamedClass = [FunctionClass, string];

/** One function's description, as functions.json holds it. */
export type DescribedFunction = {
  readonly id: string;
  readonly description: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly description: string;
    readonly dimensionality?: string | undefined;
    readonly optional?: boolean | undefined;
  }[];
};

/** The engine's classes for our functions, and what its editor shows about them. */
export type EngineFunctions = {
  readonly classes: NamedClass[];
  readonly descriptions: EngineModule.IFunctionInfo[];
};

/** Makes every cell function known to the engine; `sentences` keeps what errors say. */
export function engineFunctions(
  engine: Engine,
  functions: readonly CellFunction[],
  described: readonly DescribedFunction[],
  sentences: Sentences,
): EngineFunctions {
  const known = new Map(described.map((each) => [each.id, each]));
  const both = functions.map(({ id, run }) => {
    const description = known.get(id);
    if (description === undefined) throw new Error(`functions.json lacks ${id}: run npm run docs`);
    return { run, description };
  });
  return {
    classes: both.map(({ run, description }) => [
      functionClass(engine, run, description, sentences),
      `${NAMESPACE}.${description.id}`,
    ]),
    descriptions: both.map(({ description }) => editorDescription(engine, description)),
  };
}

function functionClass(
  engine: Engine,
  run: CellFunction['run'],
  described: DescribedFunction,
  sentences: Sentences,
): FunctionClass {
  return class extends engine.BaseFunction {
    // Unset, for the engine's own refusal of too few or too many arguments has no sentence.
    override minParams = -1;
    override maxParams = -1;

    // Text such as "03/04/2022" or "1E234" must arrive as it was typed.
    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }

    override calculate(...given: EngineValue[]): EngineValue {
      const answer = answerFor(run, described, given);
      sentences.note({ sheet: this.subUnitId ?? '', row: this.row, column: this.column }, answer);
      return answerForEngine(engine, answer, this);
    }
  };
}

function answerFor(
  run: CellFunction['run'],
  { id, parameters }: DescribedFunction,
  given: readonly EngineValue[],
): Cell[][] {
  const least = parameters.filter(({ optional }) => optional !== true).length;
  if (given.length < least || given.length > parameters.length) {
    return refused('argumentCount', `${NAMESPACE}.${id}`, {
      least,
      most: parameters.length,
      given: given.length,
    });
  }
  const values = given.map(plainValue);
  const isMatrix = (index: number): boolean => parameters[index]!.dimensionality === 'matrix';
  const wide = parameters.find((_, index) => !isMatrix(index) && isBlock(values[index]));
  if (wide !== undefined) return refused('oneValue', wide.name);
  return settled(() => run(...values.map((value, index) => (isMatrix(index) ? value : single(value)))));
}

// An error that is thrown here would end the whole calculation, and Node with it.
function settled(run: () => Cell[][]): Cell[][] {
  try {
    return run();
  } catch {
    return [[{ error: '#VALUE!', message: BUG }]];
  }
}

const refused = (because: 'argumentCount' | 'oneValue', argument: string, more = {}): Cell[][] => [
  [errorCell(problem('badInput', because, argument, undefined, { more }))],
];

const single = (value: unknown): unknown => (Array.isArray(value) ? (value[0] as unknown[])[0] : value);

const isBlock = (value: unknown): boolean =>
  Array.isArray(value) && (value.length > 1 || (value[0] as unknown[] | undefined)!.length > 1);

/** A value of the engine in the functions' own terms; empty cells are null, errors keep their code. */
function plainValue(value: EngineValue): unknown {
  if (value.isArray()) {
    const rows = (value as EngineModule.ArrayValueObject).getArrayValue();
    return rows.map((row) =>
      row.map((cell) => (cell === null || cell === undefined ? null : plainCell(cell))),
    );
  }
  return plainCell(value);
}

function plainCell(value: EngineValue): unknown {
  if (value.isNull()) return null;
  if (value.isError()) return errorFrom(value);
  return value.isBoolean() ? Boolean(value.getValue()) : value.getValue();
}

function errorFrom(value: EngineValue): CellError {
  const error = String(value.getValue());
  return { error, message: sentenceIn(value.getCustomData(), error) };
}

function answerForEngine(
  engine: Engine,
  answer: readonly Cell[][],
  at: EngineModule.BaseFunction,
): EngineValue {
  const rows = answer.map((row) => row.map((cell) => cellForEngine(engine, cell)));
  const [first] = rows;
  if (rows.length === 1 && first!.length === 1) return first![0]!;
  return engine.ArrayValueObject.create({
    calculateValueList: rows,
    rowCount: rows.length,
    columnCount: first!.length,
    unitId: at.unitId ?? '',
    sheetId: at.subUnitId ?? '',
    row: at.row,
    column: at.column,
  });
}

function cellForEngine(engine: Engine, cell: Cell): EngineValue {
  if (isCellError(cell)) return errorForEngine(engine, cell);
  if (typeof cell === 'number') return engine.NumberValueObject.create(cell);
  if (typeof cell === 'boolean') return engine.BooleanValueObject.create(cell);
  return engine.StringValueObject.create(cell);
}

// The sentence goes with the error through every function of the engine that hands it on, and stays in its cell.
function errorForEngine({ ErrorValueObject }: Engine, { error, message }: CellError): EngineValue {
  return ErrorValueObject.create(error as EngineModule.ErrorType, message).withCustomData({ error, message });
}

function editorDescription(engine: Engine, { id, description, parameters }: DescribedFunction) {
  return {
    functionName: `${NAMESPACE}.${id}`,
    functionType: engine.FunctionType.User,
    description,
    abstract: description,
    functionParameter: parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description,
      example: 'A1',
      require: parameter.optional === true ? (0 as const) : (1 as const),
      repeat: 0 as const,
    })),
  };
}
