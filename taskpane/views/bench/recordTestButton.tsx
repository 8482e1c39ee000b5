import { useRef } from 'preact/hooks';
import type { BenchAnswer } from '../../../src/cranking/benchAnswer.ts';
import type { BenchEntry } from '../../../src/cranking/benchEntry.ts';
import { recordTest } from '../../actions/bench.ts';
import type { Session } from '../../session.ts';
import { moveOn } from './moveOn.ts';
import { BENCH } from '../../text/benchText.ts';

const focusIdentity = (from: HTMLElement): void =>
  from.closest('.bench')?.querySelector<HTMLElement>('.identity input')?.focus();

/**
 * Puts the test on record and goes on to the next battery; without a serial it asks for one. While the battery is looked
 * up there may be no answer yet: the button waits with the clerk.
 */
export function RecordTestButton({
  session,
  entry,
  found,
}: {
  readonly session: Session;
  readonly entry: BenchEntry | undefined;
  readonly found: BenchAnswer | undefined;
}) {
  const isRecorded = session.bench.isRecorded.value;
  const isLooking = session.bench.isLooking.value;
  const isWriting = session.bench.isWriting.value;
  const at = useRef<HTMLButtonElement>(null);
  const press = (): void => {
    if (isRecorded) moveOn(at.current!);
    else void record(at.current!);
  };
  const record = async (button: HTMLElement): Promise<void> => {
    if (isLooking || isWriting || entry === undefined || found === undefined) return;
    if (await recordTest(session, entry, found)) moveOn(button);
    else if (session.bench.identityProblem.value !== undefined) focusIdentity(button);
  };
  return (
    <button
      type="button"
      data-stop
      aria-disabled={isRecorded || isLooking || isWriting}
      ref={at}
      onClick={press}
    >
      {isRecorded ? BENCH.recorded : BENCH.record}
    </button>
  );
}
