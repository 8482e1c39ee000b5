import { writeStoreList } from '../../actions/store.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { ComparePart } from './comparePart.tsx';
import { CountPart } from './countPart.tsx';
import { STORE } from '../../text/storeText.ts';

/** What the storekeeper asks of the inventory: the list, the count, last month's file. */
export function StorePart({ session }: { readonly session: Session }) {
  return (
    <>
      <FoldedPart title={STORE.heading}>
        <p>{STORE.about}</p>
        <button type="button" onClick={() => void writeStoreList(session)} aria-describedby="storeListHint">
          {STORE.list}
        </button>
        <p id="storeListHint" class="note">
          {STORE.listHint}
        </p>
      </FoldedPart>
      <CountPart session={session} />
      <ComparePart session={session} />
    </>
  );
}
