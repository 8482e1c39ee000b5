import { writeStoreList } from '../../actions/store.ts';
import type { Session } from '../../session.ts';
import { ComparePart } from './comparePart.tsx';
import { CountPart } from './countPart.tsx';
import { STORE } from './text.ts';

/** What the storekeeper asks of the inventory: the list, the count, last month's file. */
export function StorePart({ session }: { readonly session: Session }) {
  return (
    <section aria-labelledby="store">
      <h3 id="store">{STORE.heading}</h3>
      <p>{STORE.about}</p>
      <button type="button" onClick={() => void writeStoreList(session)} aria-describedby="storeListHint">
        {STORE.list}
      </button>
      <small id="storeListHint">{STORE.listHint}</small>
      <CountPart session={session} />
      <ComparePart session={session} />
    </section>
  );
}
