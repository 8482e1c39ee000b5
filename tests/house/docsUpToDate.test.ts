import { beforeAll, describe, expect, it } from 'vitest';
import { exampleAnswers } from '../../docs/generate/exampleAnswers.ts';
import { functionsDoc } from '../../docs/generate/functionsDoc.ts';
import { functionWords } from '../../docs/generate/metadata.ts';
import { validationText } from '../../docs/generate/validationSections.ts';
import type { FormulaAnswer } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { checks, notOurs } from '../published/index.ts';
import { textOf } from './sourceFiles.ts';

let answers: FormulaAnswer[];
beforeAll(async () => {
  answers = await exampleAnswers();
});

/** The first line in which two texts differ; both are long. */
function firstDifference(committed: string, generated: string): string {
  const [ours, wanted] = [committed.split('\n'), generated.split('\n')];
  const line = wanted.findIndex((text, index) => text !== ours[index]);
  if (line < 0) return ours.length === wanted.length ? 'none' : `line ${wanted.length + 1}: too long`;
  return `run npm run docs; line ${line + 1} is ${ours[line]}, would be ${wanted[line]}`;
}

describe('the generated pages', () => {
  it('docs/functions.md is what npm run docs would write', () => {
    expect(firstDifference(textOf('docs/functions.md'), functionsDoc(answers))).toBe('none');
  });

  it('docs/validation.md is what npm run docs would write', () => {
    expect(firstDifference(textOf('docs/validation.md'), validationText())).toBe('none');
  });

  it('docs/validation.md shows every check, miss and figure that is not ours', () => {
    const ids = textOf('docs/validation.md').match(/(?<=^\| )[^|]+(?= \|)/gm);
    expect(ids).toEqual(expect.arrayContaining([...checks, ...notOurs].map(({ id }) => id)));
  });
});

describe('the example of each cell function', () => {
  it.each(functionWords().map(({ id }, index) => ({ id, index })))('CRANK.$id answers', ({ index }) => {
    const cells = [answers[index]!].flat(2);
    expect(cells.length).toBeGreaterThan(0);
    expect(cells.filter((cell) => typeof cell === 'object')).toEqual([]);
  });
});
