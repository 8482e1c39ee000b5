import { describe, expect, it } from 'vitest';
import { plan } from '../../src/planning/plan.ts';
import type { PlanSettings } from '../../src/planning/planSettings.ts';
import { DEFAULT_PLAN_SETTINGS } from '../../src/planning/planSettings.ts';
import type { PlanYear } from '../../src/planning/planYears.ts';
import { AS_OF, inventedFleet } from './inventedFleet.ts';

function years(settings: Partial<PlanSettings>): readonly PlanYear[] {
  const { batteries, lives } = inventedFleet();
  const made = plan(batteries, lives, { asOf: AS_OF, settings: { ...DEFAULT_PLAN_SETTINGS, ...settings } });
  if (!made.ok) throw new Error(made.problem.because);
  return made.value.years;
}

describe('planned renewals by fiscal year', () => {
  it('are none where batteries are renewed when they fail', () => {
    expect(years({}).map(({ planned }) => planned)).toEqual([0, 0, 0]);
  });

  it('are part of what is expected, and more of it the lower the age', () => {
    const sum = (age: number): number =>
      years({ policy: { age } }).reduce((all, { planned }) => all + planned, 0);
    expect(sum(24)).toBeGreaterThan(sum(36));
    expect(sum(36)).toBeGreaterThan(0);
    for (const { planned, expected } of years({ policy: { age: 36 } }))
      expect(planned).toBeLessThanOrEqual(expected);
  });

  it('spread over the first year what is over the age already', () => {
    // At an age that all have passed, each battery is renewed once within 12 months, failed or planned.
    const [begun, next] = years({ policy: { age: 1 } });
    expect(begun!.expected + next!.expected).toBeGreaterThan(120);
  });
});
