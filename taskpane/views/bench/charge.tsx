import { useState } from 'preact/hooks';
import { CHARGING_CAUTIONS } from '../../../src/cranking/cautions.ts';
import { recordCharge } from '../../actions/bench.ts';
import { benchSerial } from '../../bench/benchState.ts';
import { LabelledControl } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { CautionList } from './cautionList.tsx';
import { BENCH } from './text.ts';

/** Puts a charge on record; its cautions stand before the button. */
export function Charge({ session }: { readonly session: Session }) {
  const [isFull, setFull] = useState(false);
  const [charger, setCharger] = useState('');
  return (
    <details class="charge">
      <summary>{BENCH.chargeHeading}</summary>
      <CautionList cautions={CHARGING_CAUTIONS} />
      <label>
        <input
          type="checkbox"
          checked={isFull}
          onChange={({ currentTarget }) => setFull(currentTarget.checked)}
        />
        {BENCH.chargeFull}
      </label>
      <LabelledControl label={BENCH.charger} hint={undefined} wrong={undefined}>
        {(props) => (
          <input
            {...props}
            type="text"
            value={charger}
            onInput={({ currentTarget }) => setCharger(currentTarget.value)}
          />
        )}
      </LabelledControl>
      <button
        type="button"
        disabled={benchSerial(session.bench) === ''}
        onClick={() => void recordCharge(session, isFull, charger)}
      >
        {BENCH.chargeRecord}
      </button>
    </details>
  );
}
