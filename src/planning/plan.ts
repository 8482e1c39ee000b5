import type { Day } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { andThen, answer } from '../basics/outcome.ts';
import type { LifePrior } from '../life/lifePrior.ts';
import { DEFAULT_LIFE_PRIOR } from '../life/lifePrior.ts';
import type { Battery, Life } from '../service/battery.ts';
import { dueNowRows } from './lifeRecords.ts';
import type { CountWindow } from './countCells.ts';
import { fleetForecast } from './fleetForecast.ts';
import type { PartPlan } from './planParts.ts';
import { planParts } from './planParts.ts';
import type { PlanPeriods } from './planPeriods.ts';
import { ownWindow, planPeriods, windowToDate } from './planPeriods.ts';
import type { Place } from './places.ts';
import { placesOf } from './places.ts';
import type { PlanLife } from './lifeFigures.ts';
import { lifeGroups, planLife } from './planLife.ts';
import type { Horizon, PlanTime } from './planTime.ts';
import { HORIZONS, planHorizons, planTimes } from './planTime.ts';
import type { PlannedUnit } from './planUnits.ts';
import { planUnits } from './planUnits.ts';
import { renewalRule } from './renewalRule.ts';
import type { PlanSettings } from './planSettings.ts';
import { DEFAULT_PLAN_SETTINGS } from './planSettings.ts';
import type { PlanYear } from './planYears.ts';
import { planYears } from './planYears.ts';
import type { Fleet } from './planViews.ts';
import type { OddGroup } from '../life/standsOut.ts';
import type { PastTrial } from './ownPast.ts';
import { planOwnPast, planStandsOut } from './planEvidence.ts';
import { extrapolatedShare } from './extrapolatedShare.ts';
import type { Funding } from './funding.ts';
import { fundingTable } from './funding.ts';

/** A replacement plan: what will fail when, what to order, what it costs, and which batteries are meant. */
export type Plan = {
  readonly asOf: Day;
  readonly settings: PlanSettings;
  readonly prior: LifePrior;
  readonly life: PlanLife;
  /** Share of the failures expected within 12 months at ages beyond the oldest failure on record. */
  readonly extrapolated: number;
  readonly inService: number;
  readonly ageUnknown: number;
  /** Age of planned renewal [months]; Infinity = on failure only. */
  readonly plannedAge: number;
  /** Condemned but still in service: bought now, outside every forecast count. */
  readonly dueNow: number;
  readonly usableStock: number;
  readonly years: readonly PlanYear[];
  /** Counts within 12, 24 and 36 months. */
  readonly horizons: readonly Horizon[];
  readonly quarters: readonly PlanTime[];
  readonly months: readonly PlanTime[];
  readonly sites: readonly PartPlan[];
  readonly types: readonly PartPlan[];
  readonly units: readonly PlannedUnit[];
  readonly funding: Funding;
  /** The same method tried on the rows as they stood one and two years before. */
  readonly ownPast: readonly PastTrial[];
  /** Groups with more early failures than chance explains. */
  readonly standsOut: readonly OddGroup[];
};

/** What a plan is asked for. */
export type PlanRequest = {
  readonly asOf: Day;
  readonly settings?: PlanSettings;
  readonly prior?: LifePrior;
};

/**
 * The replacement plan of a fleet from its batteries and the lives on record. Failures to come are counted with
 * the places kept filled: a battery that replaces a failed one can fail again.
 * @param batteries  as they stand at as-of
 * @param lives      one for each battery life on record
 * @param request    as-of, what the planner chose, what is believed before the records
 * @problem notEnoughData  when no battery in service has an age, or least cost is asked for without its costs
 */
export function plan(
  batteries: readonly Battery[],
  lives: readonly Life[],
  request: PlanRequest,
): Outcome<Plan> {
  const full = { settings: DEFAULT_PLAN_SETTINGS, prior: DEFAULT_LIFE_PRIOR, ...request };
  const dueNow = dueNowRows(batteries);
  return andThen(placesOf(batteries), ({ places, meanAge }) =>
    andThen(lifeGroups(places, lives, dueNow, full), (groups) =>
      andThen(planLife(lives, dueNow, full.prior), (life) =>
        andThen(renewalRule(full.settings, life), (rule) =>
          andThen(planOwnPast(lives, full.asOf, full.prior), (past) =>
            answer({
              ...assemble(batteries, places, { groups, meanAge, rule }, life, full),
              ownPast: past,
              standsOut: planStandsOut(lives, dueNow),
            }),
          ),
        ),
      ),
    ),
  );
}

function assemble(
  batteries: readonly Battery[],
  places: readonly Place[],
  fleet: Fleet,
  life: PlanLife,
  { asOf, settings, prior }: Required<PlanRequest>,
): Omit<Plan, 'ownPast' | 'standsOut'> {
  const dueNow = places.filter((place) => place.dueNow).length;
  const usableStock = batteries.filter((battery) => isUsableStock(battery, asOf)).length;
  const periods = planPeriods(asOf, settings);
  const forecast = fleetForecast(fleet, windowsOf(periods));
  const years = planYears(fleet, forecast, periods.years, { asOf, settings, dueNow, usableStock });
  return {
    asOf,
    settings,
    prior,
    life,
    extrapolated: extrapolatedShare(fleet, life.oldestFailure),
    inService: places.length,
    plannedAge: fleet.rule.plannedAge,
    ageUnknown: places.filter((place) => !place.ageKnown).length,
    dueNow,
    usableStock,
    years,
    horizons: planHorizons(forecast),
    ...planTimes(forecast, periods, years),
    ...planParts(fleet, years),
    units: planUnits(fleet, forecast, years),
    funding: fundingTable(fleet, periods.years),
  };
}

// All that the parts of the plan ask about, so that it is forecast once.
function windowsOf({ years, quarters, months }: PlanPeriods): CountWindow[] {
  const own = [...years, ...quarters, ...months].map(ownWindow);
  return [...own, ...years.map(windowToDate), ...HORIZONS];
}

/** On the shelf, good or never tested, and not overdue for charge. */
export function isUsableStock(battery: Battery, asOf: Day): boolean {
  if (battery.whereabouts !== 'inStock') return false;
  const good = battery.verdict === undefined || battery.verdict === 'Serviceable';
  return good && !(battery.chargeBy !== undefined && battery.chargeBy < asOf);
}
