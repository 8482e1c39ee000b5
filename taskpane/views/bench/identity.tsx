import { useRef } from 'preact/hooks';
import { isoDay } from '../../../src/basics/calendar.ts';
import { problemText } from '../../../src/basics/problemText.ts';
import type { Battery } from '../../../src/service/battery.ts';
import { giveIdentity, identify } from '../../actions/bench.ts';
import { readPicture, takeSelectedRow } from '../../actions/benchIdentity.ts';
import type { BenchFound } from '../../computing/benchAnswer.ts';
import { LabelledControl } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { moveOn } from './moveOn.ts';
import { BENCH, FACTS } from '../../text/benchText.ts';

/** Which battery it is: typed, scanned, taken from the selected row or read from a picture. */
export function Identity({ session }: { readonly session: Session }) {
  const { bench } = session;
  const field = useRef<HTMLInputElement>(null);
  const wrong = bench.identityProblem.value;
  const readFrom = async (picture: File | undefined): Promise<void> => {
    if ((await readPicture(session, picture)) && field.current) moveOn(field.current);
  };
  const takeRow = async (): Promise<void> => {
    if ((await takeSelectedRow(session)) && field.current) moveOn(field.current);
  };
  return (
    <div
      class="identity"
      data-takes-files
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        event.stopPropagation();
        void readFrom(event.dataTransfer?.files[0]);
      }}
      onPaste={(event) => {
        const picture = event.clipboardData?.files[0];
        if (picture !== undefined) void readFrom(picture);
      }}
    >
      <LabelledControl label={BENCH.identity} hint={BENCH.identityHint} wrong={wrong && problemText(wrong)}>
        {(props) => (
          <input
            {...props}
            ref={field}
            data-stop
            type="text"
            autocomplete="off"
            spellcheck={false}
            value={bench.form.value.identity}
            onInput={({ currentTarget }) => giveIdentity(session, currentTarget.value)}
            onChange={() => void identify(session)}
          />
        )}
      </LabelledControl>
      <div class="buttons">
        <button type="button" class="secondary" onClick={() => void takeRow()}>
          {BENCH.selected}
        </button>
        <label class="fileButton">
          {BENCH.picture}
          <input
            type="file"
            accept="image/*"
            onChange={({ currentTarget }) => {
              void readFrom(currentTarget.files?.[0]);
              // The same picture may be chosen again for the next battery.
              currentTarget.value = '';
            }}
          />
        </label>
      </div>
      {session.reading.value === undefined && <p>{BENCH.noInventory}</p>}
      {bench.found.value !== undefined && (
        <Known found={bench.found.value} hasInventory={session.reading.value !== undefined} />
      )}
    </div>
  );
}

function Known({ found, hasInventory }: { readonly found: BenchFound; readonly hasInventory: boolean }) {
  const { battery, rows, differences, takenOff, serial } = found;
  return (
    <div class="known" role="status">
      {takenOff !== undefined && <p>{BENCH.takenOff(takenOff, serial)}</p>}
      {battery === undefined && rows.length > 1 && <p>{BENCH.several(rows.join(', '))}</p>}
      {battery === undefined && rows.length === 0 && hasInventory && <p>{BENCH.unknown}</p>}
      {differences.map((each) => (
        <p key={each} class="wrong">
          {each}
        </p>
      ))}
      {battery !== undefined && <Facts battery={battery} />}
    </div>
  );
}

function Facts({ battery }: { readonly battery: Battery }) {
  const { made, lot, ageMonths, vehicle, site, type, readings } = battery;
  const facts = [
    [FACTS.made, made === undefined ? '' : isoDay(made).slice(0, 7)],
    [FACTS.lot, lot],
    [FACTS.months, ageMonths === undefined ? '' : ageMonths.toFixed(0)],
    [FACTS.vehicle, vehicle],
    [FACTS.site, site],
    [FACTS.type, type],
    [FACTS.lastTest, readings?.testedOn === undefined ? '' : isoDay(Math.floor(readings.testedOn))],
  ].filter(([, value]) => value !== '');
  return (
    <dl class="facts">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
