import { dayFrom, isoDay } from '../../src/basics/calendar.ts';
import type { Session } from '../session.ts';
import { AS_OF, AS_OF_HINT } from '../text/paneText.ts';

/** The day on which everything is counted. */
export function AsOfField({
  session,
  onChange,
}: {
  readonly session: Session;
  readonly onChange: () => void;
}) {
  const take = (text: string): void => {
    const day = dayFrom(text, AS_OF);
    if (!day.ok || day.value === session.asOf.value) return;
    session.asOf.value = day.value;
    onChange();
  };
  return (
    <label class="asOf">
      {AS_OF}
      <input
        type="date"
        aria-describedby="asOfHint"
        value={isoDay(session.asOf.value)}
        onChange={(event) => take(event.currentTarget.value)}
      />
      <small id="asOfHint">{AS_OF_HINT}</small>
    </label>
  );
}
