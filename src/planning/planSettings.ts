import type { FiscalLabel } from '../service/fiscalPeriod.ts';

/** What the chosen need is: the expected count, or a count that is enough in 4 years of 5 or 19 of 20. */
export type Ask = 'expected' | '4in5' | '19in20';

/** When batteries are renewed: on failure, at an age in months, or at the age of least cost. */
export type Policy = 'failure' | { readonly age: number } | 'leastCost';

/** A number of batteries that arrives, or a change of the fleet, in one calendar month (2027-03). */
export type OnOrder = { readonly month: string; readonly count: number };
export type FleetChange = OnOrder & { readonly site: string; readonly type: string };

/** Prices in one currency, each for one battery; `rise` is a share a year. */
export type Money = {
  readonly currency: string;
  /** No price, no money: costs are then left open. */
  readonly unitPrice: number | null;
  readonly rise: number;
  /** Paid back for the old battery. */
  readonly refund: number;
  readonly freight: number;
  /** Fitting one battery. */
  readonly labour: number;
  /** What a failure in the field costs beside the battery; only the least-cost age needs it. */
  readonly failureCost: number | null;
};

/** What a planner may choose; every default is here. */
export type PlanSettings = {
  readonly fiscalFirstMonth: number;
  /** By which calendar year a fiscal year is named. */
  readonly fiscalLabel: FiscalLabel;
  readonly years: number;
  readonly groupBy: null | 'type' | 'site' | 'maker';
  readonly policy: Policy;
  /** Batteries above the planned age already are renewed evenly over so many months, oldest first; 0 = at once. */
  readonly overdueMonths: number;
  readonly wholeSets: boolean;
  /** Share of removed batteries that come back to stock after charge and test, 0 to 1. */
  readonly recovered: number;
  /** Share of good mates of a renewed set that are used again, 0 to 1. */
  readonly matesReused: number;
  readonly onOrder: readonly OnOrder[];
  readonly fleetChanges: readonly FleetChange[];
  /** Batteries to have on the shelf at each year's end. */
  readonly stockTarget: number;
  readonly ask: Ask;
  /** The year that pays: in which it is ordered, or in which it is needed. */
  readonly chargeTo: 'order' | 'need';
  readonly money: Money;
  readonly leadMonths: number;
  readonly safetyMonths: number;
};

/** The plan that nobody has changed yet. */
export const DEFAULT_PLAN_SETTINGS: PlanSettings = {
  fiscalFirstMonth: 1,
  fiscalLabel: 'endYear',
  years: 3,
  groupBy: null,
  policy: 'failure',
  overdueMonths: 12,
  wholeSets: false,
  recovered: 0,
  matesReused: 0,
  onOrder: [],
  fleetChanges: [],
  stockTarget: 0,
  ask: 'expected',
  chargeTo: 'order',
  money: { currency: '', unitPrice: null, rise: 0, refund: 0, freight: 0, labour: 0, failureCost: null },
  leadMonths: 0,
  safetyMonths: 0,
};
