import type { HeadlessWorkbook } from './workbookHeadless.ts';

/** Whether the formula engine can parse a text that begins with "=". */
export function isFormula({ api, engine }: HeadlessWorkbook, formula: string): boolean {
  if (formula.slice(1).trim() === '') return false;
  const tree = api.getFormula().lexerTreeBuilder.treeBuilder(formula);
  return !engine.ERROR_TYPE_SET.has(tree as never);
}
