import { problemText } from '../../../src/basics/problemText.ts';
import type { Retest } from '../../../src/cranking/batteryTest.ts';
import type { BenchForm } from '../../bench/benchForm.ts';
import type { ReadingName } from '../../bench/readReadings.ts';
import { READINGS, readReadings } from '../../bench/readReadings.ts';
import type { BenchState } from '../../bench/benchState.ts';
import { LabelledControl } from '../../parts/settingField.tsx';
import { BENCH, CONSTRUCTIONS, READING_HINTS, READING_LABELS, RETESTS } from '../../text/benchText.ts';

/** The readings, and which test it is. */
export function Readings({ bench }: { readonly bench: BenchState }) {
  return (
    <div class="fieldGrid">
      {READINGS.map((name) => (
        <Reading key={name} bench={bench} name={name} />
      ))}
      <Choice
        label={BENCH.retest}
        hint={BENCH.retestHint}
        choices={RETESTS}
        value={bench.form.value.retest}
        give={(retest: Retest) => put(bench, { retest })}
      />
      <Choice
        label={BENCH.construction}
        hint={BENCH.constructionHint}
        choices={CONSTRUCTIONS}
        value={bench.form.value.construction}
        isPassed={hasTested(bench)}
        give={(construction: BenchForm['construction']) => put(bench, { construction })}
      />
    </div>
  );
}

/** The tester and who tests: said once, then passed over by Enter. */
export function Tested({ bench }: { readonly bench: BenchState }) {
  const { tester, initials } = bench.form.value;
  const isPassed = hasTested(bench);
  return (
    <div class="fieldGrid">
      <Words
        label={BENCH.tester}
        value={tester}
        isPassed={isPassed}
        give={(said) => put(bench, { tester: said })}
      />
      <Words
        label={BENCH.initials}
        value={initials}
        isPassed={isPassed}
        give={(said) => put(bench, { initials: said })}
      />
    </div>
  );
}

/** After the first battery, Enter passes over what stays from one to the next; Tab still stops there. */
const hasTested = (bench: BenchState): boolean => bench.recorded.value.tests > 0;

/** Marks a field at which the work stops, or one that Enter passes over. */
const stop = (isPassed: boolean | undefined) =>
  isPassed ? ({ class: 'passed' } as const) : ({ 'data-stop': true } as const);

function put(bench: BenchState, more: Partial<BenchForm>): void {
  bench.form.value = { ...bench.form.value, ...more };
  bench.isRecorded.value = false;
}

function Reading({ bench, name }: { readonly bench: BenchState; readonly name: ReadingName }) {
  const { readings } = bench.form.value;
  const wrong = readReadings(readings).wrong[name];
  return (
    <LabelledControl
      label={READING_LABELS[name]}
      hint={READING_HINTS[name]}
      wrong={wrong !== undefined && !wrong.ok ? problemText(wrong.problem) : undefined}
    >
      {(props) => (
        <input
          {...props}
          data-stop
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={readings[name]}
          onInput={({ currentTarget }) =>
            put(bench, { readings: { ...bench.form.value.readings, [name]: currentTarget.value } })
          }
        />
      )}
    </LabelledControl>
  );
}

function Choice<V extends string | number>({
  label,
  hint,
  choices,
  value,
  isPassed,
  give,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly isPassed?: boolean;
  readonly choices: readonly (readonly [V, string])[];
  readonly value: V;
  readonly give: (value: V) => void;
}) {
  return (
    <LabelledControl label={label} hint={hint} wrong={undefined}>
      {(props) => (
        <select
          {...props}
          {...stop(isPassed)}
          value={String(value)}
          onChange={({ currentTarget }) => give(choices[currentTarget.selectedIndex]![0])}
        >
          {choices.map(([each, words]) => (
            <option key={each} value={String(each)}>
              {words}
            </option>
          ))}
        </select>
      )}
    </LabelledControl>
  );
}

function Words(field: {
  readonly label: string;
  readonly value: string;
  readonly isPassed: boolean;
  readonly give: (text: string) => void;
}) {
  return (
    <LabelledControl label={field.label} hint={undefined} wrong={undefined}>
      {(props) => (
        <input
          {...props}
          {...stop(field.isPassed)}
          type="text"
          autocomplete="off"
          value={field.value}
          onInput={({ currentTarget }) => field.give(currentTarget.value)}
        />
      )}
    </LabelledControl>
  );
}
