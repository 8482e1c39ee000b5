import type { ParseArgsConfig } from 'node:util';
import { parseArgs } from 'node:util';
import type { Outcome } from '../../src/basics/outcome.ts';
import { problemText } from '../../src/basics/problemText.ts';
import { Refusal } from './exit.ts';

/** The options and other arguments of a command line; an option that is not known is wrong usage. */
export function parsedOptions<const T extends NonNullable<ParseArgsConfig['options']>>(
  args: readonly string[],
  options: T,
) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    throw new Refusal(2, `${(error as Error).message}; see --help`);
  }
}

/** The value of an outcome; its problem's sentence ends the command. */
export function valueOr<T>(outcome: Outcome<T>, code: 1 | 2): T {
  if (outcome.ok) return outcome.value;
  throw new Refusal(code, problemText(outcome.problem));
}
