import { useState } from 'preact/hooks';
import { problemText } from '../../../src/basics/problemText.ts';
import { DEFAULT_LIFE_PRIOR, priorFromRules } from '../../../src/life/lifePrior.ts';
import { weibullQuantile } from '../../../src/life/weibull.ts';
import { giveSetting } from '../../actions/giveSetting.ts';
import { showLife } from '../../actions/showLife.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import { LabelledControl } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { THUMB } from '../../text/lifeText.ts';

/** The rule of thumb, to be seen and replaced: two ages, and how sure its owner is. */
export function RuleOfThumb({ session }: { readonly session: Session }) {
  const { prior } = settingsInForce(session);
  const [wrong, setWrong] = useState<string>();
  const shape = 1 / prior.sigma;
  const scale = prior.medianMonths / Math.LN2 ** prior.sigma;
  const tenth = weibullQuantile(0.1, shape, scale);
  const take = (form: FormData): void => {
    const [half, early] = [Number(form.get('half')), Number(form.get('tenth'))];
    const made = priorFromRules(0.1, early, 0.5, half, form.get('sure') !== null);
    const refused = made.ok ? giveSetting(session, 'prior', made.value) : made.problem;
    setWrong(refused && problemText(refused));
    if (refused === undefined) void showLife(session);
  };
  const back = (): void => {
    giveSetting(session, 'prior', undefined);
    setWrong(undefined);
    void showLife(session);
  };
  return (
    <FoldedPart title={THUMB.heading} state={THUMB.state(rounded(prior.medianMonths), rounded(tenth))}>
      <p>{THUMB.hint}</p>
      <form
        key={`${prior.medianMonths} ${prior.sigma}`}
        onSubmit={(event) => {
          event.preventDefault();
          take(new FormData(event.currentTarget));
        }}
      >
        <Months name="half" label={THUMB.half} value={prior.medianMonths} wrong={wrong} />
        <Months name="tenth" label={THUMB.tenth} value={tenth} wrong={undefined} />
        <label>
          <input
            type="checkbox"
            name="sure"
            defaultChecked={prior.spreadLogMedian < DEFAULT_LIFE_PRIOR.spreadLogMedian}
            aria-describedby="sureHint"
          />
          {THUMB.sure}
        </label>
        <small id="sureHint">{THUMB.sureHint}</small>
        <button type="submit">{THUMB.take}</button>
        <button type="button" class="secondary" onClick={back}>
          {THUMB.back}
        </button>
      </form>
    </FoldedPart>
  );
}

const rounded = (months: number): string => String(Math.round(months));

function Months(field: {
  readonly name: string;
  readonly label: string;
  readonly value: number;
  readonly wrong: string | undefined;
}) {
  return (
    <LabelledControl label={field.label} hint={undefined} wrong={field.wrong}>
      {(props) => (
        <input
          {...props}
          name={field.name}
          type="number"
          step="any"
          min="1"
          max="600"
          required
          defaultValue={rounded(field.value)}
        />
      )}
    </LabelledControl>
  );
}
