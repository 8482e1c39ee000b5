import { describe, expect, it } from 'vitest';
import { functionMetadata, functionWords, metadataText } from '../../docs/generate/metadata.ts';
import committed from '../../functions/functions.json' with { type: 'json' };
import { functions } from '../../functions/list.ts';
import { released } from './releasedFunctions.ts';
import { sourceFiles, textOf } from './sourceFiles.ts';

/** Parameters that take one value; every other takes a cell or a column. */
const SINGLE = [
  ['layout', 'part', 'field', 'unit', 'by', 'firstMonth', 'from', 'to', 'model'],
  ['level', 'periods', 'monthsEach', 'chance', 'share', 'mostMonths'],
].flat();

const MOST = {
  id: 64,
  description: 1024,
  parameters: 128,
  parameterName: 64,
  parameterText: 200,
  file: 1_000_000,
};

// Any of them would be read as a cell: A1 to XFD1048576, or R1C1.
const CELL_LIKE = /^(?:[A-Z]{1,3}\d+|R\d*C\d*|R\d*|C\d*)$/i;

/** The unit that an argument's words must name, by the argument's name, where it has one. */
const UNITS: Readonly<Record<string, RegExp>> = {
  volts: /\bV\b/,
  temperature: /\bC\b/,
  rating: /\bamperes\b/,
  value: /\bamperes\b/,
  reading: /\bamperes\b.*\bvolts\b/,
  days: /\[d\]/,
  ...Object.fromEntries(
    ['month', 'month1', 'month2', 'months', 'monthsOut', 'mostMonths', 'leadMonths', 'safetyMonths']
      .concat(['age', 'ages', 'ageAtRecordStart', 'scale'])
      .map((name) => [name, /\bmonths\b/i]),
  ),
};

/** A range, a kind of date or text, or the words that may stand there. */
const SAYS_WHAT_IS_ALLOWED =
  /-?\d[\d.,e]* to -?\d|\b(?:above|under) \d|\d or more|up to \d|\d = |\bTRUE\b|"\w|such as|\btext\b|\bdates?\b|characters|letters|columns|pairs|Pieces|same unit/i;

const described = functionMetadata();

describe('the metadata of the functions', () => {
  it('is what functions/functions.json holds', () => {
    expect(metadataText()).toBe(textOf('functions/functions.json'));
  });

  it('counts as many functions as the list, the sources and the file, in one order', () => {
    const tags = sourceFiles('functions').flatMap((path) => [...textOf(path).matchAll(/@customfunction /g)]);
    const ids = functions.map(({ id }) => id);
    expect(tags).toHaveLength(ids.length);
    expect(described.map(({ id }) => id)).toEqual(ids);
    expect(committed.functions.map(({ id }) => id)).toEqual(ids);
    expect(functionWords().map(({ id }) => id)).toEqual(ids);
  });

  it('has ids that are unique and last', () => {
    const ids = described.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id, name } of described) {
      expect(id).toMatch(/^[A-Z][A-Z0-9_.]{2,63}$/);
      expect(id).not.toMatch(CELL_LIKE);
      expect(name).toBe(id);
    }
  });

  it('tells a name like a cell when it sees one', () => {
    for (const id of ['A1', 'SOC12', 'XFD1048576', 'R1C1', 'RC']) expect(id).toMatch(CELL_LIKE);
    expect('STATEOFCHARGE').not.toMatch(CELL_LIKE);
  });

  it('lets errors in ranges through, and stays under a megabyte', () => {
    for (const each of described) expect(each.allowErrorForDataTypeAny).toBe(true);
    expect(textOf('functions/functions.json').length).toBeLessThan(MOST.file);
  });
});

/** A function as the released list writes it: ID(needed, [optional]). */
const written = ({ id, parameters }: (typeof described)[number]): string =>
  `${id}(${parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(', ')})`;

/** Whether a formula written for the one signature still means the same under the other. */
const keeps = (before: string, now: string): boolean =>
  now.startsWith(before.slice(0, -1)) && /^(?:(?:, )?\[\w+\])*\)$/.test(now.slice(before.length - 1));

describe('the functions that workbooks may already call', () => {
  it.each(released)('%s', (before) => {
    const now = described.find(({ id }) => before.startsWith(`${id}(`));
    expect(now, 'is gone').toBeDefined();
    expect(keeps(before, written(now!)), `is ${written(now!)} now`).toBe(true);
  });

  it('are all functions that there are', () => {
    expect(released.map((line) => line.split('(')[0])).toEqual(described.map(({ id }) => id));
  });

  it('may get optional arguments behind the others, and no other change', () => {
    expect(keeps('F(a, [b])', 'F(a, [b], [c])')).toBe(true);
    expect(keeps('F(a)', 'F(a, [b])')).toBe(true);
    for (const now of ['F(a)', 'F([b], a)', 'F(a, b)', 'F(a, [b], c)', 'F(a, [bb])', 'F(a, [c], [b])']) {
      expect(keeps('F(a, [b])', now), now).toBe(false);
    }
  });
});

describe.each(described)('the metadata of $id', ({ description, parameters, result }) => {
  it('describes the function in one line', () => {
    expect(description).toMatch(/^[A-Z].{20,}\.$/);
    expect(description.length).toBeLessThanOrEqual(MOST.description);
    expect(description).not.toMatch(/[\n@]/);
  });

  it('describes each parameter in one short line', () => {
    expect(parameters.length).toBeLessThanOrEqual(MOST.parameters);
    for (const { name, description: text } of parameters) {
      expect(name.length).toBeLessThanOrEqual(MOST.parameterName);
      expect(text, name).toMatch(/^\S.{7,}$/);
      expect(text.length, name).toBeLessThanOrEqual(MOST.parameterText);
      expect(text, name).not.toMatch(/@/);
    }
  });

  it('tells unit and range of each argument', () => {
    for (const { name, description: text } of parameters) {
      if (UNITS[name] !== undefined) expect(text, name).toMatch(UNITS[name]);
      expect(text, name).toMatch(SAYS_WHAT_IS_ALLOWED);
    }
  });

  it('takes one value or a column as listed above, and any kind of value', () => {
    for (const { name, type, dimensionality } of parameters) {
      expect([name, dimensionality ?? 'one value']).toEqual([
        name,
        SINGLE.includes(name) ? 'one value' : 'matrix',
      ]);
      expect(type).toBe('any');
    }
    expect(result.dimensionality).toBe('matrix');
  });

  it('has the arguments that may be left out behind the others', () => {
    const optional = parameters.map((parameter) => parameter.optional === true);
    expect(optional).toEqual([...optional].sort((a, b) => Number(a) - Number(b)));
  });
});

describe.each(functionWords())('the words about $id', ({ answers, uncertainty, notFor, example, id }) => {
  it('say what it answers, how sure that is, what it is not for, and give an example', () => {
    for (const text of [answers, uncertainty, notFor]) expect(text.length).toBeGreaterThan(5);
    expect(example).toMatch(new RegExp(`^=CRANK\\.${id}\\(.*\\)$`));
  });
});
