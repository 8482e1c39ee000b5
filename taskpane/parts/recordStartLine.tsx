import { useState } from 'preact/hooks';
import { shownDay } from '../../src/report/shownDay.ts';
import type { Session } from '../session.ts';
import { settingsInForce } from '../session.ts';
import { RECORD_FROM, RECORD_START } from '../text/paneText.ts';
import { RecordStartQuestion } from './recordStartQuestion.tsx';

/** Since when removals are on record, with a way to say something else. */
export function RecordStartLine({ session }: { readonly session: Session }) {
  const [open, setOpen] = useState(false);
  const start = session.reading.value?.recordStart;
  if (start === undefined) return null;
  const { dateShown } = settingsInForce(session);
  const day = start.date === undefined ? '' : shownDay(start.date, dateShown);
  return (
    <div class="recordStartLine">
      <p>
        {RECORD_FROM[start.from](day)}{' '}
        <button type="button" class="inline secondary" aria-expanded={open} onClick={() => setOpen(!open)}>
          {RECORD_START.change}
        </button>
      </p>
      {open && <RecordStartQuestion session={session} onAnswered={() => setOpen(false)} />}
    </div>
  );
}
