import { useEffect, useState } from 'preact/hooks';
import { CHARGING_CAUTIONS } from '../../../src/cranking/cautions.ts';
import { recordCharge } from '../../actions/bench.ts';
import { benchSerial } from '../../bench/benchState.ts';
import { LabelledControl } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { CautionList } from './cautionList.tsx';
import { BENCH } from '../../text/benchText.ts';

/** Puts a charge on record; its cautions stand before the button. */
export function Charge({ session }: { readonly session: Session }) {
  const [isFull, setFull] = useState(false);
  const [charger, setCharger] = useState('');
  const serial = benchSerial(session.bench);
  // Full or not is said of one battery; the charger stays for the next.
  useEffect(() => setFull(false), [serial]);
  const record = async (button: HTMLElement): Promise<void> => {
    if (!(await recordCharge(session, isFull, charger))) return;
    setFull(false);
    const next = button.closest('.bench')?.querySelector<HTMLElement>('button.next');
    next?.focus();
  };
  return (
    <details class="charge">
      <summary>{BENCH.chargeHeading}</summary>
      <CautionList cautions={CHARGING_CAUTIONS} />
      <label>
        <input
          type="checkbox"
          data-stop
          checked={isFull}
          onChange={({ currentTarget }) => setFull(currentTarget.checked)}
        />
        {BENCH.chargeFull}
      </label>
      <LabelledControl label={BENCH.charger} hint={undefined} wrong={undefined}>
        {(props) => (
          <input
            {...props}
            data-stop
            type="text"
            autocomplete="off"
            value={charger}
            onInput={({ currentTarget }) => setCharger(currentTarget.value)}
          />
        )}
      </LabelledControl>
      <button
        type="button"
        data-stop
        disabled={serial === ''}
        aria-disabled={session.bench.isWriting.value}
        onClick={({ currentTarget }) => void record(currentTarget)}
      >
        {BENCH.chargeRecord}
      </button>
    </details>
  );
}
