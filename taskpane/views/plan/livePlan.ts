import { useComputed, useSignalEffect } from '@preact/signals';
import { makePlan } from '../../actions/makePlan.ts';
import { recordStartOpen } from '../../actions/recordStart.ts';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';

/** Pause after the last change before it is planned anew [ms]. */
const PAUSE = 250;

/**
 * Plans anew whenever the inventory or a setting of the plan has changed. What is under way is not cut short: a
 * worker that is stopped would have to read the inventory again.
 */
export function useLivePlan(session: Session): void {
  const asked = useComputed(() => JSON.stringify(settingsInForce(session)));
  useSignalEffect(() => {
    if (session.reading.value === undefined || recordStartOpen(session)) return;
    if (asked.value === '') return;
    let timer = setTimeout(function plan() {
      if (session.underway.peek() === undefined) void makePlan(session);
      else timer = setTimeout(plan, PAUSE);
    }, PAUSE);
    return () => clearTimeout(timer);
  });
}
