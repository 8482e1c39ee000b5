import { useState } from 'preact/hooks';
import type { Change } from '../../../src/inventory/compareFiles.ts';
import type { Battery } from '../../../src/service/battery.ts';
import { compareWith } from '../../actions/store.ts';
import type { Compared } from '../../computing/storeAnswers.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import { LabelledControl } from '../../parts/settingField.tsx';
import type { Session } from '../../session.ts';
import { FoundList } from './foundList.tsx';
import { COMPARE_FILES } from '../../text/storeText.ts';

/** An earlier file of the same inventory beside this one. */
export function ComparePart({ session }: { readonly session: Session }) {
  const [compared, setCompared] = useState<Compared>();
  const take = async (file: File | undefined): Promise<void> => {
    if (file !== undefined) setCompared(await compareWith(session, file));
  };
  return (
    <FoldedPart title={COMPARE_FILES.heading}>
      <LabelledControl label={COMPARE_FILES.choose} hint={COMPARE_FILES.hint} wrong={undefined}>
        {(props) => (
          <input
            {...props}
            type="file"
            accept=".xlsx,.xlsm,.csv"
            onChange={({ currentTarget }) => void take(currentTarget.files?.[0])}
          />
        )}
      </LabelledControl>
      <div role="status">{compared !== undefined && <Changes compared={compared} />}</div>
    </FoldedPart>
  );
}

const serialOf = ({ serial, site }: Battery): string => (site === '' ? serial : `${serial}, ${site}`);
const changeOf = ({ now, what }: Change): string => `${now.serial}: ${what}`;

const named = (sites: readonly string[]): string =>
  sites.map((site) => site || COMPARE_FILES.unnamed).join(', ');

function Changes({ compared }: { readonly compared: Compared }) {
  const { lists } = COMPARE_FILES;
  const { onlyBefore, onlyNow, readFrom, lacksTests } = compared;
  return (
    <>
      {readFrom !== undefined && <p>{COMPARE_FILES.readFrom(readFrom)}</p>}
      {lacksTests && <p>{COMPARE_FILES.lacksTests}</p>}
      {onlyBefore.length > 0 && <p>{COMPARE_FILES.onlyBefore(named(onlyBefore))}</p>}
      {onlyNow.length > 0 && <p>{COMPARE_FILES.onlyNow(named(onlyNow))}</p>}
      <FoundList heading={lists.fresh} lines={compared.fresh.map(serialOf)} />
      <FoundList heading={lists.gone} lines={compared.gone.map(serialOf)} />
      <FoundList heading={lists.moved} lines={compared.moved.map(changeOf)} />
      <FoundList heading={lists.verdictChanged} lines={compared.verdictChanged.map(changeOf)} />
      <FoundList heading={lists.notCompared} lines={compared.notCompared} />
      <p>{COMPARE_FILES.unchanged(compared.unchanged)}</p>
    </>
  );
}
