import type { Day } from '../basics/calendar.ts';

/** Where a battery is at as-of. */
export type Whereabouts = 'inService' | 'inStock' | 'removed';

/** The four words in which the tool judges a battery; see cranking/verdict.ts. */
export type VerdictWord = 'Serviceable' | 'Awaiting charge' | 'Condemned' | 'Not judged';

/** What a removal's cause means for a life: only `failed` ends one. */
export type RemovalMeaning = 'failed' | 'good' | 'damaged' | 'notSaid';

/** How a plate group holds its acid, or this battery's own rested full-charge voltage at 25 C [V]. */
export type Construction = 'AGM' | 'flooded' | 'gel' | number;

/** One physical battery as it stands at as-of. Empty text = the sheet says nothing. */
export type Battery = {
  /** The sheet's own 1-based row number of its latest row. */
  readonly row: number;
  readonly serial: string;
  readonly stockNumber: string;
  readonly maker: string;
  readonly lot: string;
  readonly type: string;
  readonly site: string;
  readonly vehicle: string;
  readonly set: string;
  readonly construction: Construction;
  readonly whereabouts: Whereabouts;
  readonly made?: Day;
  /** First installation; undefined = unknown. */
  readonly installed?: Day;
  /** Months on a shelf between installations, already spent out of a vehicle. */
  readonly monthsOut: number;
  /** Age in service at as-of [months of 30.4375 days]; undefined = unknown. */
  readonly ageMonths?: number;
  /** A verdict on its latest reading, where there is one to judge. */
  readonly verdict?: VerdictWord;
  readonly verdictReason?: string;
  /** State of charge from its latest rest voltage, 0 to 1. */
  readonly charge?: number;
  /** Date by which a stored battery is to be charged again. */
  readonly chargeBy?: Day;
  /** Its place in a set or vehicle, and its place on a shelf. */
  readonly place?: string;
  readonly storagePlace?: string;
  /** True where nothing names the construction and AGM was taken. */
  readonly constructionAssumed?: boolean;
  /** True where the made date stands for an unknown installation; shelf time then counts as service. */
  readonly installedFromMade?: boolean;
  /** The readings that the verdict and the charge rest on. */
  readonly readings?: Readings;
  /** Where its tests are going, for one in service with enough of them in amperes. */
  readonly trend?: TestTrend;
};

/** What a battery's tests over time say of tests to come, held against the least accepted. */
export type TestTrend = {
  /** When its line reaches the least [months from as-of], with a 90 % band; undefined = not surely falling. */
  readonly crossingMonths?: { readonly best: number; readonly low: number; readonly high: number };
  /** Chance that a test 12 or 24 months after as-of reads under the least. */
  readonly chance12: number;
  readonly chance24: number;
};

/** A battery's latest readings on record; what is not known is left out. */
export type Readings = {
  readonly testedOn?: Day;
  readonly chargedOn?: Day;
  /** Rest voltage [V]. */
  readonly restVolts?: number;
  /** Battery temperature [C]. */
  readonly celsius?: number;
  /** Cranking reading [A as the tester shows them], or volts at the end of a load test. */
  readonly reading?: number;
  /** Least reading that the owner accepts, in the unit of the reading. */
  readonly least?: number;
  /** Rating on the label [A]. */
  readonly rating?: number;
  /** 0 first test, 1 first retest, 2 second retest. */
  readonly retest?: 0 | 1 | 2;
  readonly damaged?: boolean;
};

/**
 * One battery life as the records show it, ages in months of 30.4375 days since first installation (time on
 * the shelf between installations taken out).
 */
export type Life = {
  readonly row: number;
  readonly serial: string;
  readonly type: string;
  readonly site: string;
  readonly maker: string;
  readonly lot: string;
  readonly vehicle: string;
  /** First installation; for the tool's trial on its own past. */
  readonly installed: Day;
  /** When it came under record (records begin, or watched since); at or after `installed`. */
  readonly watchedFrom: Day;
  /** Removal, or undefined while in service. */
  readonly removed?: Day;
  readonly meaning?: RemovalMeaning;
  /** Age when it came under record. */
  readonly entry: number;
  /** Age at removal or at as-of; for an interval its beginning. */
  readonly from: number;
  /** End of the interval where the removal is known to the month only; else equal to `from`. */
  readonly to: number;
};
