import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { Settings } from '../../src/inventory/settings.ts';
import type { Plan } from '../../src/planning/plan.ts';
import { plan } from '../../src/planning/plan.ts';
import { recordsAfter } from '../recordsAfter.ts';
import type { Memory } from './memory.ts';

/** A plan as the pane shows it; the units, one for each battery, stay on the computing side. */
export type ShownPlan = Omit<Plan, 'units'>;

/** What is planned with: settings of the plan that were changed since the inventory was read. */
export type PlanAsked = { readonly settings: Settings };

/** The plan of the inventory that was read last. */
export function planAnswer(memory: Memory, asked?: PlanAsked): Outcome<ShownPlan> {
  const { inventory, asOf } = memory;
  const settings = asked?.settings ?? memory.settings;
  if (inventory === undefined || asOf === undefined || settings === undefined)
    throw new Error('no inventory has been read yet');
  Object.assign(memory, { settings, plan: undefined });
  const late = recordsAfter(settings.recordsSince, asOf);
  if (late !== undefined) return late;
  const request = { asOf, settings, prior: settings.prior };
  return andThen(plan(inventory.batteries, inventory.lives, request), (made) => {
    memory.plan = made;
    const { units, ...shown } = made;
    return answer(shown);
  });
}
