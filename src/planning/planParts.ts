import type { PlanYear } from './planYears.ts';
import { BAND } from './planYears.ts';
import { ownWindow } from './planPeriods.ts';
import type { Fleet, PartDemand, PartOf } from './planViews.ts';
import { partDemands } from './planViews.ts';
import { shareOut } from './shareOut.ts';

/** A site or type in one fiscal year. */
export type PartYear = {
  /** Expected failures, to one decimal; the parts add up to the fleet's. */
  readonly expected: number;
  readonly low: number;
  readonly high: number;
  /** The part's share of the year's order, whole batteries; the parts add up to it. */
  readonly unitsToOrder: number;
};

/** A site or type and its fiscal years. */
export type PartPlan = {
  readonly name: string;
  readonly inService: number;
  readonly dueNow: number;
  readonly years: readonly PartYear[];
};

/** The plan by site and by type. */
export function planParts(
  fleet: Fleet,
  years: readonly PlanYear[],
): { sites: PartPlan[]; types: PartPlan[] } {
  const partings: PartOf[] = [({ battery }) => battery.site, ({ battery }) => battery.type];
  const [sites, types] = partDemands(fleet, years.map(ownWindow), partings);
  return { sites: partPlans(sites!, years), types: partPlans(types!, years) };
}

// Low and high of parts don't add up.
function partPlans(parts: readonly PartDemand[], years: readonly PlanYear[]): PartPlan[] {
  const dueNow = parts.map(({ places }) => places.filter((place) => place.dueNow).length);
  const shared = years.map((year, y) => {
    const own = parts.map(({ demands }) => demands[y]!.expected);
    const due = y === 0 ? dueNow : dueNow.map(() => 0);
    return {
      expected: shareOut(own, 0.1, year.expected),
      orders: shareOut(
        own.map((expected, part) => expected + due[part]!),
        1,
        year.order.unitsToOrder,
      ),
    };
  });
  return parts.map(({ name, places, demands }, part) => ({
    name,
    inService: places.length,
    dueNow: dueNow[part]!,
    years: years.map((_, y) => ({
      expected: shared[y]!.expected[part]!,
      low: demands[y]!.quantile(BAND[0]),
      high: demands[y]!.quantile(BAND[1]),
      unitsToOrder: shared[y]!.orders[part]!,
    })),
  }));
}
