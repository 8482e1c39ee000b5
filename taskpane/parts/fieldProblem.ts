import type { Problem } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';

/** Why a field's value was refused, by the name that stands at the field and not by the setting's key. */
export function fieldProblem(problem: Problem, label: string): string {
  return problemText(problem.because === 'settingWrong' ? { ...problem, argument: `"${label}"` } : problem);
}
