import { giveRecords } from '../../actions/benchRecords.ts';
import type { Session } from '../../session.ts';
import { BENCH } from '../../text/benchText.ts';

/** Records that may not go into the workbook that is open, until the user takes them. */
export function KeptRecords({ session }: { readonly session: Session }) {
  const count = session.bench.kept.value.length;
  if (count === 0) return null;
  return (
    <div class="kept">
      <p>{BENCH.keptCount(count)}</p>
      <button type="button" onClick={() => void giveRecords(session)}>
        {BENCH.giveKept}
      </button>
    </div>
  );
}
