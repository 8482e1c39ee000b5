import type { Outcome } from '../../../src/basics/outcome.ts';
import { answer, problem } from '../../../src/basics/outcome.ts';

/** The oldest program that the pane works in, by its requirement sets. */
const FLOOR = [
  ['CustomFunctionsRuntime', '1.3'],
  ['SharedRuntime', '1.1'],
  ['ExcelApi', '1.12'],
] as const;

/** Whether this program is new enough, or what it lacks. */
export function requirementsMet(): Outcome<void> {
  const { requirements } = Office.context;
  const lacking = FLOOR.filter(([name, version]) => !requirements.isSetSupported(name, version));
  if (lacking.length === 0) return answer(undefined);
  const sets = lacking.map(([name, version]) => `${name} ${version}`).join(', ');
  return problem('badInput', 'excelTooOld', 'program', sets, { more: { message: sets } });
}

/** Whether a later set of the Excel interface may be used. */
export function hasExcelApi(version: string): boolean {
  return Office.context.requirements.isSetSupported('ExcelApi', version);
}
