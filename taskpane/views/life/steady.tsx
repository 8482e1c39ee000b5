import { useState } from 'preact/hooks';
import type { SteadyFleet } from '../../../src/planning/steadyFleet.ts';
import { showLife } from '../../actions/showLife.ts';
import { LabelledControl } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { STEADY } from '../../text/lifeText.ts';

/** So far apart, purchases and estimate no longer agree. */
const FAR = 0.25;

/** Where no removal is on record: what ages alone can say, if the fleet has long been steady. */
export function Steady({ session }: { readonly session: Session }) {
  const take = (steady: boolean): void => {
    session.steady.value = steady;
    void showLife(session);
  };
  const found = session.life.value?.steady;
  return (
    <fieldset>
      <legend>{STEADY.question}</legend>
      <p>{STEADY.hint}</p>
      <label>
        <input
          type="checkbox"
          checked={session.steady.value}
          onChange={({ currentTarget }) => take(currentTarget.checked)}
        />
        {STEADY.yes}
      </label>
      {found !== undefined && <Estimate found={found} />}
    </fieldset>
  );
}

function Estimate({ found }: { readonly found: SteadyFleet }) {
  const [bought, setBought] = useState(0);
  const { best, low, high } = found.halfGone;
  const agrees = Math.abs(bought / found.purchasesAYear - 1) <= FAR;
  return (
    <>
      <p>
        {STEADY.says(best.toFixed(0), low.toFixed(0), high.toFixed(0))}{' '}
        {STEADY.purchases(found.purchasesAYear.toFixed(0))}
      </p>
      <LabelledControl label={STEADY.bought} hint={STEADY.boughtHint} wrong={undefined}>
        {(props) => (
          <input
            {...props}
            type="number"
            min="0"
            step="1"
            onChange={({ currentTarget }) => setBought(Number(currentTarget.value))}
          />
        )}
      </LabelledControl>
      {bought > 0 && <p>{agrees ? STEADY.agrees : STEADY.differs}</p>}
      <p>{STEADY.mark}</p>
    </>
  );
}
