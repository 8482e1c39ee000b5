import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { giveSetting } from '../actions/giveSetting.ts';
import type { SettingPath } from '../givenSettings.ts';
import { settingAt } from '../givenSettings.ts';
import type { Session } from '../session.ts';
import { settingsInForce } from '../session.ts';
import { NOT_A_NUMBER } from '../text/paneText.ts';
import { fieldProblem } from './fieldProblem.ts';

/** What every field for one setting is told. */
export type FieldOf = {
  readonly session: Session;
  /** The setting's key, dotted such as money.unitPrice, or its keys one by one. */
  readonly path: SettingPath;
  readonly label: string;
  readonly hint?: string;
};

/** What a control must carry so that its label, hint and problem belong to it. */
type ControlProps = {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': 'true' | undefined;
};

/** A label, its control, its hint and what is wrong with what was given. */
export function LabelledControl({
  label,
  hint,
  wrong,
  children,
}: {
  readonly label: string;
  readonly hint: string | undefined;
  readonly wrong: string | undefined;
  readonly children: (props: ControlProps) => ComponentChildren;
}) {
  const id = useId();
  const described = [hint && `${id}-hint`, wrong && `${id}-wrong`].filter(Boolean).join(' ');
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {children({
        id,
        'aria-describedby': described || undefined,
        'aria-invalid': wrong === undefined ? undefined : 'true',
      })}
      {hint && <small id={`${id}-hint`}>{hint}</small>}
      {wrong && (
        <small id={`${id}-wrong`} class="wrong" role="alert">
          {wrong}
        </small>
      )}
    </div>
  );
}

/** What was typed and refused, and why. */
type Refused = { readonly typed: string; readonly why: string };

/** Gives a setting; what is refused stays as typed, with the sentence that says why. */
function useSetting({ session, path, label }: FieldOf) {
  const [refused, setRefused] = useState<Refused>();
  const give = (value: unknown, typed = ''): void => {
    const problem = giveSetting(session, path, value);
    setRefused(problem && { typed, why: fieldProblem(problem, label) });
  };
  const refuse = (why: string): void => setRefused({ typed: '', why });
  return { value: settingAt(settingsInForce(session), path), refused, refuse, give };
}

/**
 * A number; left empty it has its default again. `percent`: a share that is shown and typed in per cent.
 */
export function NumberSetting({ percent = false, ...field }: FieldOf & { readonly percent?: boolean }) {
  const { value, refused, refuse, give } = useSetting(field);
  const shown = typeof value === 'number' ? String(rounded(percent ? value * 100 : value)) : '';
  const take = (input: HTMLInputElement): void => {
    const number = input.value === '' ? undefined : rounded(Number(input.value) / (percent ? 100 : 1));
    if (input.validity?.badInput) refuse(NOT_A_NUMBER);
    else give(number, input.value);
  };
  return (
    <LabelledControl label={field.label} hint={field.hint} wrong={refused?.why}>
      {(props) => (
        <input
          {...props}
          type="number"
          step="any"
          inputMode="decimal"
          value={refused?.typed ?? shown}
          onChange={({ currentTarget }) => take(currentTarget)}
        />
      )}
    </LabelledControl>
  );
}

/** Free of the dust that a hundredfold and a hundredth leave. */
const rounded = (value: number): number => Number(value.toPrecision(12));

/** A short text. */
export function TextSetting(field: FieldOf) {
  const { value, refused, give } = useSetting(field);
  return (
    <LabelledControl label={field.label} hint={field.hint} wrong={refused?.why}>
      {(props) => (
        <input
          {...props}
          type="text"
          value={String(value ?? '')}
          onChange={({ currentTarget }) => give(currentTarget.value.trim() || undefined)}
        />
      )}
    </LabelledControl>
  );
}

/** One of a few values. */
export function ChoiceSetting<V extends string | number | null>({
  choices,
  ...field
}: FieldOf & { readonly choices: readonly (readonly [value: V, words: string])[] }) {
  const { value, refused, give } = useSetting(field);
  return (
    <LabelledControl label={field.label} hint={field.hint} wrong={refused?.why}>
      {(props) => (
        <select
          {...props}
          value={String(choices.findIndex(([each]) => each === value))}
          onChange={({ currentTarget }) => give(choices[Number(currentTarget.value)]?.[0])}
        >
          {choices.map(([each, words], index) => (
            <option key={each} value={String(index)}>
              {words}
            </option>
          ))}
        </select>
      )}
    </LabelledControl>
  );
}

/** Yes or no. */
export function TickSetting(field: FieldOf) {
  const { value, give } = useSetting(field);
  const id = useId();
  return (
    <div class="field tick">
      <label for={id}>
        <input
          id={id}
          type="checkbox"
          checked={value === true}
          aria-describedby={field.hint && `${id}-hint`}
          onChange={({ currentTarget }) => give(currentTarget.checked)}
        />
        {field.label}
      </label>
      {field.hint && <small id={`${id}-hint`}>{field.hint}</small>}
    </div>
  );
}
