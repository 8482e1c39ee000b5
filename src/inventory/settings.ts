import * as z from 'zod';
import { FIRST_DAY, isoDay, LAST_DAY } from '../basics/calendar.ts';
import type { Outcome } from '../basics/outcome.ts';
import { answer, problem } from '../basics/outcome.ts';
import { compileLayout } from '../label/layout.ts';
import { FIELDS } from './fields.ts';
import { nearest } from './nearest.ts';

// Each leaf carries what is allowed as its error text, so that every refusal can say it.
const number = (low: number, high: number) => {
  const error = `a number, ${low} to ${high}`;
  return z.number({ error }).min(low, { error }).max(high, { error });
};
const whole = (low: number, high: number) => {
  const error = `a whole number, ${low} to ${high}`;
  return z.int({ error }).min(low, { error }).max(high, { error });
};
const words = <const W extends readonly string[]>(all: W) =>
  z.enum(all, { error: `one of ${all.join(', ')}` });
const text = z.string({ error: 'a text' });
const truth = z.boolean({ error: 'true or false' });

// A date cell of a settings sheet arrives as a number of days.
const dayText = (given: unknown): unknown =>
  typeof given === 'number' && given >= FIRST_DAY && given <= LAST_DAY ? isoDay(given) : given;
const monthText = (given: unknown): unknown => {
  const day = dayText(given);
  return typeof day === 'string' ? day.slice(0, 7) : day;
};
const MONTH = 'a month such as 2027-03';
const month = z.preprocess(
  monthText,
  z.string({ error: MONTH }).regex(/^\d{4}-(0[1-9]|1[0-2])$/, { error: MONTH }),
);
const RECORDS = 'a date such as 2022-06-30, "never" or "unknown"';
const recordsSince = z.preprocess(
  dayText,
  z.union([z.enum(['never', 'unknown']), z.iso.date({ error: RECORDS })], { error: RECORDS }),
);

const LAYOUT = 'a layout such as MMyy-lot';
const layout = z.string({ error: LAYOUT }).refine((given) => compileLayout(given).ok, { error: LAYOUT });
const CONSTRUCTION = 'AGM, flooded, gel, or the full rest voltage at 25 C, 12 to 13.5';
const construction = z.union([z.enum(['AGM', 'flooded', 'gel']), number(12, 13.5)], {
  error: CONSTRUCTION,
});
const POLICY = '"failure", "leastCost" or an age in months, 1 to 600';
const policy = z.union([z.enum(['failure', 'leastCost']), z.strictObject({ age: number(1, 600) })], {
  error: POLICY,
});

const site = z.strictObject({
  coldest: number(-60, 50).optional(),
  average: number(-40, 50).optional(),
  heated: truth.default(false),
  parked: truth.default(false),
});
const arrival = { month, count: whole(-1_000_000, 1_000_000) };
const prior = z.strictObject({
  medianMonths: number(1, 600).default(54),
  spreadLogMedian: number(0.01, 5).default(1),
  sigma: number(0.02, 5).default(0.4),
  spreadLogSigma: number(0.01, 5).default(0.5),
});
const store = z.strictObject({
  /** Months from made after which a battery that was never fitted is too long on its shelf. */
  shelfMonths: number(1, 240).default(24),
  shelfMonthsFlooded: number(1, 240).default(12),
  /** Batteries to be charged again within so many days stand on the store list beside those overdue. */
  chargeSoonDays: whole(0, 366).default(30),
  /** How far the batteries of one set may differ: months between their made dates, share of the reading, rest volts. */
  setMonths: number(0, 240).default(12),
  setReading: number(0, 1).default(0.1),
  setVolts: number(0, 2).default(0.1),
});
const amount = number(0, 1e9);
const money = z.strictObject({
  currency: text.default(''),
  unitPrice: amount.nullable().default(null),
  rise: number(-0.5, 1).default(0),
  refund: amount.default(0),
  freight: amount.default(0),
  labour: amount.default(0),
  failureCost: amount.nullable().default(null),
});

/** The settings of an inventory and its plan: one schema for the command line, the pane and a workbook's own sheet. */
export const settingsSchema = z.strictObject({
  version: z.literal(1, { error: '1' }).default(1),
  tab: text.optional(),
  headerRow: whole(1, 1_048_576).optional(),
  /** Field to header; an empty text says that no column holds the field. */
  columns: z.partialRecord(z.enum(FIELDS), text).default({}),
  /** Maker (or * for all others) to layout. */
  layouts: z.record(z.string(), layout).default({}),
  /** Text of the removal-cause column to what it means. */
  causes: z.record(z.string(), words(['failed', 'good', 'damaged', 'notSaid'])).default({}),
  /** Text of the construction, type, stock number or part column to the construction. */
  constructions: z.record(z.string(), construction).default({}),
  recordsSince: recordsSince.optional(),
  sites: z.record(z.string(), site).default({}),
  fiscalFirstMonth: whole(1, 12).default(1),
  /** By which calendar year a fiscal year is named: in which it ends or begins, or both (FY2026/27). */
  fiscalLabel: words(['endYear', 'startYear', 'both']).default('endYear'),
  years: whole(1, 10).default(3),
  prior: prior.prefault({}),
  groupBy: words(['type', 'site', 'maker']).nullable().default(null),
  policy: policy.default('failure'),
  /** What is above the planned age already is renewed over so many months, oldest first; 0 = at once. */
  overdueMonths: number(0, 120).default(12),
  wholeSets: truth.default(false),
  recovered: number(0, 1).default(0),
  matesReused: number(0, 1).default(0),
  onOrder: z.array(z.strictObject(arrival), { error: 'a list' }).default([]),
  fleetChanges: z
    .array(z.strictObject({ ...arrival, site: text.default(''), type: text.default('') }), {
      error: 'a list',
    })
    .default([]),
  stockTarget: whole(0, 1_000_000).default(0),
  ask: words(['expected', '4in5', '19in20']).default('expected'),
  chargeTo: words(['order', 'need']).default('order'),
  money: money.prefault({}),
  /** Limits of the store list. */
  store: store.prefault({}),
  leadMonths: number(0, 60).default(0),
  safetyMonths: number(0, 60).default(0),
  /** How text dates such as 03/04/2026 are meant, where the column itself doesn't show it. */
  dateOrder: words(['dayFirst', 'monthFirst']).optional(),
  /** How dates are shown on the sheets that are written: 2026-06-30, 30/06/2026 or 06/30/2026. */
  dateShown: words(['yearFirst', 'dayFirst', 'monthFirst']).default('yearFirst'),
  /** Cell functions of our own beside the figures of the unit list; who opens the file then needs the add-in. */
  liveFormulas: truth.default(false),
  /** The unit of the temperature column, where the header and the values don't show it. */
  temperatureUnit: words(['C', 'F']).optional(),
  /** Leave out hidden and filtered rows. */
  visibleOnly: truth.default(false),
  /** A test older than this at as-of doesn't count. */
  testMonths: number(1, 120).default(12),
});

/** Settings with every default filled in. */
export type Settings = z.output<typeof settingsSchema>;

/** Settings as a person gives them: everything may be left out. */
export type GivenSettings = z.input<typeof settingsSchema>;

/** The settings that nobody has changed. */
export const DEFAULT_SETTINGS: Settings = settingsSchema.parse({});

/**
 * Settings from what a file or sheet holds, defaults filled in; nothing unknown or wrong is passed over.
 * @param given  parsed JSON
 * @returns settings
 * @problem badInput  when a key is not known (the nearest known one is named), or a value is not allowed
 * @example settingsFrom({ years: 5 }).value.years // 5
 */
export function settingsFrom(given: unknown): Outcome<Settings> {
  const parsed = settingsSchema.safeParse(given);
  if (parsed.success) return answer(parsed.data);
  const issue = parsed.error.issues[0]!;
  if (issue.code === 'unrecognized_keys') return unknownKey(issue.path, issue.keys[0]!);
  if (issue.code === 'invalid_key') return unknownKey(issue.path.slice(0, -1), String(issue.path.at(-1)));
  if (issue.path.length === 0) return wrongValue('settings', given, 'one object of keys and values');
  return wrongValue(issue.path.map(String).join('.'), valueAt(given, issue.path), issue.message);
}

function wrongValue(argument: string, given: unknown, allowed: string): Outcome<never> {
  const shown = typeof given === 'object' && given !== null ? JSON.stringify(given) : given;
  return problem('badInput', 'settingWrong', argument, shown, { more: { allowed } });
}

function unknownKey(path: readonly PropertyKey[], key: string): Outcome<never> {
  const at = [...path.map(String), key].join('.');
  return problem('badInput', 'settingUnknown', at, undefined, {
    more: { nearest: nearest(key, knownAt(path)) },
  });
}

/** Every key that the settings have at their top. */
export const SETTING_KEYS: readonly string[] = Object.keys(settingsSchema.shape);

function knownAt(path: readonly PropertyKey[]): readonly string[] {
  const inside: Readonly<Record<string, readonly string[]>> = {
    columns: FIELDS,
    sites: Object.keys(site.shape),
    prior: Object.keys(prior.shape),
    money: Object.keys(money.shape),
    store: Object.keys(store.shape),
    policy: ['age'],
    onOrder: ['month', 'count'],
    fleetChanges: ['month', 'count', 'site', 'type'],
  };
  return path.length === 0 ? SETTING_KEYS : (inside[String(path[0])] ?? SETTING_KEYS);
}

function valueAt(given: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
    given,
  );
}
