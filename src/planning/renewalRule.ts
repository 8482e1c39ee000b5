import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { replacementAge } from '../life/replacementAge.ts';
import type { PlanLife } from './lifeFigures.ts';
import type { PlanSettings } from './planSettings.ts';
import type { RenewalRule } from './planViews.ts';

/**
 * When batteries are renewed, from the planner's policy. Least cost weighs a planned renewal (price, freight and
 * labour) against a failure in the field, which costs more by `failureCost`; where waiting for failure is always
 * cheaper, batteries are renewed on failure.
 * @problem notEnoughData  when least cost is asked for without a price or the cost of a failure
 */
export function renewalRule(settings: PlanSettings, life: PlanLife): Outcome<RenewalRule> {
  const { policy, wholeSets, overdueMonths } = settings;
  const rule = { wholeSets, overdueMonths };
  if (policy === 'failure') return answer({ ...rule, plannedAge: Infinity });
  if (policy !== 'leastCost') return answer({ ...rule, plannedAge: policy.age });
  const { unitPrice, freight, labour, failureCost } = settings.money;
  if (unitPrice === null || failureCost === null)
    return problem('notEnoughData', 'leastCostNeedsCosts', 'policy');
  const planned = unitPrice + freight + labour;
  const age = replacementAge(life.shape, life.scale, planned, planned + failureCost);
  return answer({ ...rule, plannedAge: age.ok ? age.value : Infinity });
}
