import type { Outcome } from '../../src/basics/outcome.ts';
import { answer } from '../../src/basics/outcome.ts';
import type { ShownPlan } from '../computing/planAnswer.ts';
import type { Session } from '../session.ts';
import { settingsInForce } from '../session.ts';
import { PLANNING } from '../text/paneText.ts';
import { underway } from './underway.ts';

/**
 * Plans from the inventory that was read, with the settings as they are now; nothing is written. Where that is given
 * up there is no plan: the one before was made with other settings. Why there can be none is said where it would
 * stand, and not twice.
 */
export async function makePlan(session: Session): Promise<void> {
  if (session.reading.value === undefined) return;
  const plan = await underway(session, PLANNING, async ({ signal }) =>
    answer(await askPlan(session, signal)),
  );
  if (plan === undefined) session.plan.value = undefined;
}

/** Asks for the plan and shows it, or why there is none. */
export async function askPlan(session: Session, signal: AbortSignal): Promise<Outcome<ShownPlan>> {
  const plan = await session.computing.ask('plan', { settings: settingsInForce(session) }, signal);
  session.plan.value = plan.ok ? plan.value : undefined;
  session.planProblem.value = plan.ok ? undefined : plan.problem;
  return plan;
}
