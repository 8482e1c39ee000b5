import type { Outcome, Problem } from '../../src/basics/outcome.ts';
import { problem } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';

/** The refusal of a later step, which tells what the steps before it have written; as it is where that is nothing. */
export function stillThere(
  refused: Problem,
  written: readonly string[],
): Extract<Outcome<never>, { ok: false }> {
  if (written.length === 0) return { ok: false, problem: refused };
  const more = { message: problemText(refused) };
  return problem('badInput', 'stillThere', 'workbook', written.join(', '), { more });
}
