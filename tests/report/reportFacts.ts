import type { Finding } from '../../src/inventory/inventory.ts';
import { DEFAULT_SETTINGS } from '../../src/inventory/settings.ts';
import type { PlanSettings } from '../../src/planning/planSettings.ts';
import { DEFAULT_PLAN_SETTINGS } from '../../src/planning/planSettings.ts';
import { plan } from '../../src/planning/plan.ts';
import type { ReportFacts } from '../../src/report/reportFacts.ts';
import type { Battery, Life } from '../../src/service/battery.ts';
import { AS_OF, battery, inventedFleet } from '../planning/inventedFleet.ts';

/** A fleet as a plan takes it. */
export type InventedFleet = { readonly batteries: readonly Battery[]; readonly lives: readonly Life[] };

/** What a forecast of the invented fleet is written from. */
export function reportFacts(
  settings: Partial<PlanSettings> = {},
  { batteries, lives }: InventedFleet = inventedFleet(),
  toCheck: readonly Finding[] = [],
  shown: Partial<ReportFacts['settings']> = {},
): ReportFacts {
  const made = plan(batteries, lives, { asOf: AS_OF, settings: { ...DEFAULT_PLAN_SETTINGS, ...settings } });
  if (!made.ok) throw new Error(made.problem.because);
  return {
    plan: made.value,
    batteries,
    settings: { ...DEFAULT_SETTINGS, ...shown },
    asOf: AS_OF,
    madeBy: 'Crankbook 0.0.0',
    fileName: 'invented.csv',
    fileHash: '0'.repeat(64),
    tab: 'invented',
    rows: { read: 181, used: 180, repaired: 0, ageUnknown: 0, leftOut: 1 },
    leftOutReasons: { 'total or subtotal': 1 },
    recordStart: { date: AS_OF - 1900, from: 'option' },
    toCheck,
    notes: [],
  };
}

/** The invented fleet with prices, times, stock and orders. */
export const PRICED: Partial<PlanSettings> = {
  money: {
    currency: 'EUR',
    unitPrice: 400,
    rise: 0.03,
    refund: 8,
    freight: 5,
    labour: 20,
    failureCost: null,
  },
  leadMonths: 5,
  safetyMonths: 1,
  recovered: 0.2,
  stockTarget: 6,
  onOrder: [{ month: '2027-02', count: 4 }],
};

/** The invented fleet with batteries of unknown age, one due now and two on the shelf. */
export function fleetWithGaps(): InventedFleet {
  const { batteries, lives } = inventedFleet();
  const condemned = batteries.map((each) =>
    each.row === 9
      ? { ...each, verdict: 'Condemned' as const, verdictReason: 'Failed again after a full charge.' }
      : each,
  );
  const more = [
    battery(901),
    battery(902, { site: '' }),
    battery(903, { whereabouts: 'inStock' }),
    battery(904, { whereabouts: 'inStock', verdict: 'Serviceable' }),
  ];
  return { batteries: [...condemned, ...more], lives };
}
