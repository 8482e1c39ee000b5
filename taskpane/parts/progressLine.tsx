import { useEffect, useState } from 'preact/hooks';
import type { Session } from '../session.ts';
import { GIVE_UP } from '../text/paneText.ts';

/** What is done sooner than this is not worth a line that comes and goes [ms]. */
const WORTH_SHOWING = 500;

/** What is under way, how far it is, and a way to give it up; shown once it takes its time. */
export function ProgressLine({ session }: { readonly session: Pick<Session, 'underway'> }) {
  const now = session.underway.value;
  const giveUp = now?.giveUp;
  const [slow, setSlow] = useState<() => void>();
  useEffect(() => {
    const timer = setTimeout(() => setSlow(() => giveUp), WORTH_SHOWING);
    return () => clearTimeout(timer);
  }, [giveUp]);
  if (now === undefined || slow !== giveUp) return null;
  return (
    <div class="progressLine">
      <label>
        {now.what}
        <progress {...(now.share === undefined ? {} : { value: now.share, max: 1 })} />
      </label>
      <button type="button" class="secondary" onClick={giveUp}>
        {GIVE_UP}
      </button>
    </div>
  );
}
