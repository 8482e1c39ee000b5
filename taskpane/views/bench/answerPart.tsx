import type { Outcome } from '../../../src/basics/outcome.ts';
import { problemText } from '../../../src/basics/problemText.ts';
import type { BenchEntry } from '../../../src/cranking/benchEntry.ts';
import type { BenchTest } from '../../../src/cranking/benchTest.ts';
import type { Session } from '../../session.ts';
import { Answer } from './answer.tsx';
import { BENCH } from './text.ts';

/** The answer where it is reached, else why not. */
export function AnswerPart({
  session,
  entry,
  test,
}: {
  readonly session: Session;
  readonly entry: Outcome<BenchEntry>;
  readonly test: Outcome<BenchTest>;
}) {
  if (session.bench.isLooking.value) return <p>{BENCH.looking}</p>;
  if (!entry.ok) return <p class="wrong">{problemText(entry.problem)}</p>;
  if (!test.ok) return <p class="wrong">{problemText(test.problem)}</p>;
  const found = test.value.answer;
  if (found === undefined) return <p>{BENCH.open}</p>;
  return <Answer session={session} entry={entry.value} found={found} />;
}
