import type { Outcome, Problem } from '../../src/basics/outcome.ts';
import { problem } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';
import type { Work } from '../host/sheetHost.ts';
import { GAVE_UP } from '../text/paneText.ts';

/** The refusal of a later step, which tells what the steps before it have written; as it is where that is nothing. */
export function stillThere(
  refused: Problem,
  written: readonly string[],
): Extract<Outcome<never>, { ok: false }> {
  return written.length === 0 ? { ok: false, problem: refused } : told(problemText(refused), written);
}

/** Does a later step; where it is given up, what the steps before it have written is told. */
export async function goneOn<T>(
  { signal }: Work,
  written: readonly string[],
  step: () => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  try {
    return await step();
  } catch (error) {
    if (!signal.aborted || written.length === 0) throw error;
    return told(GAVE_UP, written);
  }
}

const told = (message: string, written: readonly string[]): Extract<Outcome<never>, { ok: false }> =>
  problem('badInput', 'stillThere', 'workbook', written.join(', '), { more: { message } });
