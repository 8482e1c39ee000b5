import type { Problem } from '../../../src/basics/outcome.ts';
import { problemText } from '../../../src/basics/problemText.ts';
import { makePlan } from '../../actions/makePlan.ts';
import type { Session } from '../../session.ts';
import { LEAST_COST_NEEDS, PLAN_NOW } from '../../text/planText.ts';

// The pane's fields have names of their own; the settings' keys stand in no view.
const sentence = (problem: Problem): string =>
  problem.because === 'leastCostNeedsCosts' ? LEAST_COST_NEEDS : problemText(problem);

/** Why there is no plan; where planning was given up, a way to have it after all. */
export function PlanProblem({ session }: { readonly session: Session }) {
  const problem = session.planProblem.value;
  if (problem !== undefined) {
    return (
      <p class="wrong" role="alert">
        {sentence(problem)}
      </p>
    );
  }
  if (session.plan.value !== undefined || session.underway.value !== undefined) return null;
  return (
    <button type="button" onClick={() => void makePlan(session)}>
      {PLAN_NOW}
    </button>
  );
}
