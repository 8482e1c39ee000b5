import type { FormulaAnswer } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { startHeadless, stopHeadless } from '../../taskpane/host/workbook/headlessWorkbook.ts';
import { evaluateFormulas } from '../../taskpane/host/workbook/formulas.ts';
import { functionWords } from './metadata.ts';

/** The answers of the built-in workbook to every cell function's example, in the order of the list. */
export async function exampleAnswers(): Promise<FormulaAnswer[]> {
  const workbook = startHeadless();
  const examples = functionWords().map(({ example }) => example);
  const answers = await evaluateFormulas(workbook, [], undefined, examples);
  stopHeadless(workbook);
  return answers;
}
