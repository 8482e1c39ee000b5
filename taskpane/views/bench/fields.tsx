import { problemText } from '../../../src/basics/problemText.ts';
import type { Retest } from '../../../src/cranking/batteryTest.ts';
import type { BenchForm, ReadingName } from '../../bench/benchForm.ts';
import { READINGS, readReadings } from '../../bench/benchForm.ts';
import type { BenchState } from '../../bench/benchState.ts';
import { LabelledControl } from '../../parts/settingField.tsx';
import { BENCH, CONSTRUCTIONS, READING_HINTS, READING_LABELS, RETESTS } from './text.ts';

/** The readings, which test it is, the construction, the tester and who tests. */
export function Readings({ bench }: { readonly bench: BenchState }) {
  return (
    <>
      {READINGS.map((name) => (
        <Reading key={name} bench={bench} name={name} />
      ))}
      <Choice
        label={BENCH.retest}
        choices={RETESTS}
        value={bench.form.value.retest}
        give={(retest: Retest) => put(bench, { retest })}
      />
      <Choice
        label={BENCH.construction}
        hint={BENCH.constructionHint}
        choices={CONSTRUCTIONS}
        value={bench.form.value.construction}
        give={(construction: BenchForm['construction']) => put(bench, { construction })}
      />
      <Words label={BENCH.tester} value={bench.form.value.tester} give={(tester) => put(bench, { tester })} />
      <Words
        label={BENCH.initials}
        value={bench.form.value.initials}
        give={(initials) => put(bench, { initials })}
      />
    </>
  );
}

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
            put(bench, { readings: { ...readings, [name]: currentTarget.value } })
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
  give,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly choices: readonly (readonly [V, string])[];
  readonly value: V;
  readonly give: (value: V) => void;
}) {
  return (
    <LabelledControl label={label} hint={hint} wrong={undefined}>
      {(props) => (
        <select
          {...props}
          data-stop
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
  readonly give: (text: string) => void;
}) {
  return (
    <LabelledControl label={field.label} hint={undefined} wrong={undefined}>
      {(props) => (
        <input
          {...props}
          data-stop
          type="text"
          autocomplete="off"
          value={field.value}
          onInput={({ currentTarget }) => field.give(currentTarget.value)}
        />
      )}
    </LabelledControl>
  );
}
