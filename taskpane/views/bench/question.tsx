import type { BenchQuestion, YesNo } from '../../../src/cranking/benchEntry.ts';
import { BENCH_QUESTIONS } from '../../../src/cranking/benchEntry.ts';
import type { BenchState } from '../../bench/benchState.ts';
import { moveOn } from './moveOn.ts';
import { BENCH } from '../../text/benchText.ts';

const ANSWERS: readonly YesNo[] = ['yes', 'no'];

/** A question with two large answers; y and n answer it and move on. */
export function Question({ bench, ask }: { readonly bench: BenchState; readonly ask: BenchQuestion }) {
  const { form } = bench;
  const give = (answer: YesNo): void => {
    form.value = { ...form.value, answers: { ...form.value.answers, [ask]: answer } };
    bench.isRecorded.value = false;
  };
  const typed = (event: KeyboardEvent): void => {
    const answer = ANSWERS.find((each) => each.startsWith(event.key.toLowerCase()));
    if (answer === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    give(answer);
    moveOn(event.currentTarget as HTMLElement);
  };
  return (
    <fieldset class="question" data-stop onKeyDown={typed}>
      <legend>{BENCH_QUESTIONS[ask]}</legend>
      {ANSWERS.map((each) => (
        <label key={each} class="answer">
          <input
            type="radio"
            name={`bench-${ask}`}
            value={each}
            checked={form.value.answers[ask] === each}
            onChange={() => give(each)}
          />
          {BENCH[each]}
        </label>
      ))}
    </fieldset>
  );
}
