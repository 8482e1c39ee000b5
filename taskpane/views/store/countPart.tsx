import { useState } from 'preact/hooks';
import type { ShelfCount } from '../../../src/inventory/countShelf.ts';
import { countOnShelf } from '../../actions/store.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import { LabelledControl } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { FoundList } from './foundList.tsx';
import { COUNT } from '../../text/storeText.ts';

/** A shelf counted by its scans. */
export function CountPart({ session }: { readonly session: Session }) {
  const [count, setCount] = useState<ShelfCount>();
  const sites = (session.reading.value?.sites ?? []).filter((site) => site !== '');
  const run = async (form: FormData): Promise<void> => {
    const said = (name: string): string => String(form.get(name) ?? '').trim();
    const shelf = {
      ...(said('site') !== '' && { site: said('site') }),
      ...(said('place') !== '' && { storagePlace: said('place') }),
    };
    setCount(await countOnShelf(session, { scans: said('scans').split(/\r?\n/), shelf }));
  };
  return (
    <FoldedPart title={COUNT.heading}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void run(new FormData(event.currentTarget));
        }}
      >
        <LabelledControl label={COUNT.site} hint={undefined} wrong={undefined}>
          {(props) => (
            <select {...props} name="site">
              <option value="">{COUNT.anySite}</option>
              {sites.map((site) => (
                <option key={site}>{site}</option>
              ))}
            </select>
          )}
        </LabelledControl>
        <LabelledControl label={COUNT.place} hint={COUNT.placeHint} wrong={undefined}>
          {(props) => <input {...props} name="place" type="text" autocomplete="off" />}
        </LabelledControl>
        <LabelledControl label={COUNT.scans} hint={COUNT.hint} wrong={undefined}>
          {(props) => <textarea {...props} name="scans" rows={6} spellcheck={false} />}
        </LabelledControl>
        <button type="submit">{COUNT.run}</button>
      </form>
      <div role="status">{count !== undefined && <Counted count={count} />}</div>
    </FoldedPart>
  );
}

function Counted({ count }: { readonly count: ShelfCount }) {
  const { lists } = COUNT;
  return (
    <>
      <p>
        <strong>{COUNT.summary(count.found.length, count.expected)}</strong>
      </p>
      {count.takenOff.length > 0 && <p>{COUNT.takenOff(count.takenOff.join('; '))}</p>}
      <FoundList heading={lists.missing} lines={count.missing.map(({ serial }) => serial)} />
      <FoundList
        heading={lists.wrongPlace}
        lines={count.wrongPlace.map(({ battery, where }) => `${battery.serial}: ${where}`)}
      />
      <FoundList
        heading={lists.elsewhere}
        lines={count.elsewhere.map(({ battery, where }) => `${battery.serial}: ${where}`)}
      />
      <FoundList heading={lists.unknown} lines={count.unknown} />
      <FoundList
        heading={lists.twice}
        lines={count.twice.map(({ serial, times }) => COUNT.times(serial, times))}
      />
      <FoundList
        heading={lists.unreadable}
        lines={count.unreadable.map(({ scanned, why }) => `${scanned}: ${why}`)}
      />
    </>
  );
}
