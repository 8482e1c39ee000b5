import type { Outcome } from '../../src/basics/outcome.ts';
import { andThen, answer } from '../../src/basics/outcome.ts';
import type { Plan } from '../../src/planning/plan.ts';
import { plan } from '../../src/planning/plan.ts';
import type { Memory } from './memory.ts';

/** A plan as the pane shows it; the units, one for each battery, stay on the computing side. */
export type ShownPlan = Omit<Plan, 'units'>;

/** The plan of the inventory that was read last. */
export function planAnswer(memory: Memory): Outcome<ShownPlan> {
  const { inventory, asOf, settings } = memory;
  if (inventory === undefined || asOf === undefined || settings === undefined)
    throw new Error('no inventory has been read yet');
  const request = { asOf, settings, prior: settings.prior };
  return andThen(plan(inventory.batteries, inventory.lives, request), (made) => {
    memory.plan = made;
    const { units, ...shown } = made;
    return answer(shown);
  });
}
