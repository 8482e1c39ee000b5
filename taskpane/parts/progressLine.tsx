import type { Session } from '../session.ts';
import { GIVE_UP } from '../text.ts';

/** What is under way, how far it is, and a way to give it up. */
export function ProgressLine({ session }: { readonly session: Session }) {
  const now = session.underway.value;
  if (now === undefined) return null;
  return (
    <div class="progressLine">
      <label>
        {now.what}
        <progress {...(now.share === undefined ? {} : { value: now.share, max: 1 })} />
      </label>
      <button type="button" class="secondary" onClick={now.giveUp}>
        {GIVE_UP}
      </button>
    </div>
  );
}
