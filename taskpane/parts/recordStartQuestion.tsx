import { useId, useState } from 'preact/hooks';
import { problemText } from '../../src/basics/problemText.ts';
import { giveRecordStart } from '../actions/recordStart.ts';
import type { Session } from '../session.ts';
import { settingsInForce } from '../session.ts';
import { RECORD_START } from '../text/paneText.ts';

type Kind = 'date' | 'never' | 'unknown';
const KINDS: readonly Kind[] = ['date', 'never', 'unknown'];

/** Since when every removal is written down: nothing is fitted or planned before it is answered. */
export function RecordStartQuestion({
  session,
  onAnswered,
}: {
  readonly session: Session;
  readonly onAnswered?: () => void;
}) {
  const said = settingsInForce(session).recordsSince;
  const [kind, setKind] = useState<Kind | undefined>(
    said === undefined || said === 'never' || said === 'unknown' ? said : 'date',
  );
  const [wrong, setWrong] = useState<string>();
  const id = useId();
  const take = (date: string): void => {
    if (kind === undefined) return setWrong(RECORD_START.choose);
    const refused = giveRecordStart(session, kind === 'date' ? date : kind);
    setWrong(refused && problemText(refused));
    if (refused === undefined) onAnswered?.();
  };
  return (
    <form
      class="recordStart"
      onSubmit={(event) => {
        event.preventDefault();
        take(String(new FormData(event.currentTarget).get('date') ?? ''));
      }}
    >
      <fieldset aria-describedby={wrong ? `${id}-hint ${id}-wrong` : `${id}-hint`}>
        <legend>{RECORD_START.question}</legend>
        <p id={`${id}-hint`}>{RECORD_START.why}</p>
        {KINDS.map((each) => (
          <label key={each} class="choice">
            <input type="radio" name="kind" checked={kind === each} onChange={() => setKind(each)} />
            {RECORD_START.answers[each]}
          </label>
        ))}
        {kind === 'date' && (
          <label>
            {RECORD_START.date}
            <input
              type="date"
              name="date"
              aria-invalid={wrong ? 'true' : undefined}
              aria-describedby={wrong && `${id}-wrong`}
              defaultValue={said !== 'never' && said !== 'unknown' ? said : undefined}
            />
          </label>
        )}
        {wrong && (
          <small id={`${id}-wrong`} class="wrong" role="alert">
            {wrong}
          </small>
        )}
        <button type="submit">{RECORD_START.take}</button>
      </fieldset>
    </form>
  );
}
