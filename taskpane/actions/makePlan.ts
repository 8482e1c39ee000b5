import { answer } from '../../src/basics/outcome.ts';
import type { Session } from '../session.ts';
import { underway } from './underway.ts';

/** Plans from the inventory that was read; the plan is shown, nothing is written. */
export async function makePlan(session: Session): Promise<void> {
  if (session.reading.value === undefined) return;
  await underway(session, 'Planning', async ({ signal }) => {
    const plan = await session.computing.ask('plan', undefined, signal);
    session.plan.value = plan.ok ? plan.value : undefined;
    session.planProblem.value = plan.ok ? undefined : plan.problem;
    return plan.ok ? answer(undefined) : plan;
  });
}
