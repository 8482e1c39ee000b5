import { describe, expect, it } from 'vitest';
import type { PlanSettings } from '../../src/planning/planSettings.ts';
import { DEFAULT_PLAN_SETTINGS } from '../../src/planning/planSettings.ts';
import type { Plan } from '../../src/planning/plan.ts';
import { isUsableStock, plan } from '../../src/planning/plan.ts';
import { roundedTo } from '../../src/planning/roundedTo.ts';
import type { Battery, Life } from '../../src/service/battery.ts';
import { AS_OF, battery, inventedFleet, life } from './inventedFleet.ts';

const fleet = inventedFleet();

function planned(
  more: Partial<PlanSettings> = {},
  { batteries, lives } = fleet as { batteries: Battery[]; lives: Life[] },
): Plan {
  const outcome = plan(batteries, lives, { asOf: AS_OF, settings: { ...DEFAULT_PLAN_SETTINGS, ...more } });
  if (!outcome.ok) throw new Error(outcome.problem.because);
  return outcome.value;
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);
const tenths = (values: readonly number[]): number => Math.round(sum(values) * 10) / 10;

describe.each([
  ['renewed on failure', {}],
  ['one belief for each site', { groupBy: 'site' }],
  ['renewed at 48 months', { policy: { age: 48 } }],
  ['renewed at 48 months, the older ones over three years', { policy: { age: 48 }, overdueMonths: 36 }],
  ['whole sets renewed', { wholeSets: true }],
] as const)('a plan, %s', (_, settings) => {
  const made = planned(settings);

  it('every level adds up to the years, to the last digit shown', () => {
    made.years.forEach((year, y) => {
      const within = ({ from, to }: { from: number; to: number }) => from >= year.from && to <= year.to;
      expect(tenths(made.sites.map((site) => site.years[y]!.expected))).toBe(year.expected);
      expect(tenths(made.types.map((type) => type.years[y]!.expected))).toBe(year.expected);
      expect(tenths(made.quarters.filter(within).map(({ expected }) => expected))).toBe(year.expected);
      expect(tenths(made.months.filter(within).map(({ expected }) => expected))).toBe(year.expected);
      expect(sum(made.units.map(({ expected }) => expected[y]!))).toBeCloseTo(year.expected, 9);
      expect(sum(made.sites.map((site) => site.years[y]!.unitsToOrder))).toBe(year.order.unitsToOrder);
    });
  });

  it('the years together are the expected count to the end of the last, within rounding', () => {
    expect(
      Math.abs(sum(made.years.map(({ exact }) => exact)) - sum(made.years.map(({ expected }) => expected))),
    ).toBeLessThan(0.06);
  });

  it('each band holds its expected count and horizons grow', () => {
    for (const { low, high, expected } of made.years) {
      expect(low).toBeLessThanOrEqual(expected);
      expect(high).toBeGreaterThanOrEqual(expected);
    }
    for (const { low, high, expected } of made.sites.flatMap((site) => site.years)) {
      expect(low).toBeLessThanOrEqual(expected);
      expect(high).toBeGreaterThanOrEqual(expected);
    }
    expect(made.horizons.map(({ months }) => months)).toEqual([12, 24, 36]);
    expect(made.horizons[0]!.expected).toBeLessThan(made.horizons[1]!.expected);
  });
});

describe('plan', () => {
  it('lists every place once, the likeliest to fail first', () => {
    const { units } = planned();
    expect(units).toHaveLength(120);
    const chances = units.map(({ chance12 }) => chance12!);
    expect([...chances].sort((a, b) => b - a)).toEqual(chances);
    expect(units[0]!.battery.ageMonths).toBeGreaterThan(75);
  });

  it('a condemned battery still in service is due now, a failure in the fit, and its place holds a new one', () => {
    const condemned = fleet.batteries.map((each) =>
      each.row === 7 ? { ...each, verdict: 'Condemned' as const } : each,
    );
    const made = planned({}, { ...fleet, batteries: condemned });
    const plain = planned();
    expect(made.dueNow).toBe(1);
    expect(made.life.failures).toBe(plain.life.failures + 1);
    expect(made.units[0]).toMatchObject({ dueNow: true, proposedYear: made.years[0]!.label });
    expect(made.years[0]!.order.need).toBeCloseTo(made.years[0]!.expected + 1, 9);
  });

  it('ranks by the worse of age and test trend, and counts by the age alone', () => {
    const plain = planned();
    const last = plain.units.at(-1)!.battery.row;
    const trends = new Map([
      [last, { chance12: 0.999, chance24: 0.9995 }],
      [plain.units[0]!.battery.row, { chance12: 0, chance24: 0.01 }],
      [plain.units[60]!.battery.row, { chance12: 1, chance24: 1 }],
    ]);
    const batteries = fleet.batteries.map((each) => ({
      ...each,
      ...(trends.has(each.row) ? { trend: trends.get(each.row)! } : {}),
      ...(each.row === plain.units[60]!.battery.row ? { verdict: 'Condemned' as const } : {}),
    }));
    const made = planned({}, { ...fleet, batteries });
    const alone = planned(
      {},
      {
        ...fleet,
        batteries: batteries.map((each) => ({ ...each, trend: undefined })),
      },
    );
    expect(made.units[0]).toMatchObject({ dueNow: true });
    expect(made.units[0]!.trendChance12).toBeUndefined();
    expect(made.units[1]).toMatchObject({
      battery: { row: last },
      trendChance12: 0.999,
      trendChance24: 0.9995,
    });
    expect(made.units[2]).toMatchObject({ battery: { row: plain.units[0]!.battery.row }, trendChance12: 0 });
    expect(made.units[1]!.chance12).toBeLessThan(0.1);
    expect({ ...made, units: [] }).toEqual({ ...alone, units: [] });
    const byRow = (units: typeof made.units) =>
      [...units]
        .sort((a, b) => a.battery.row - b.battery.row)
        .map(({ chance12, chance24, expected }) => [
          chance12,
          chance24,
          expected.map((each) => each.toFixed(2)),
        ]);
    expect(byRow(made.units)).toEqual(byRow(alone.units));
  });

  it('a battery of unknown age has the ages of its type and site', () => {
    const unknown = battery(3);
    const likes = fleet.batteries.filter(({ type, site }) => type === unknown.type && site === unknown.site);
    const made = planned({}, { ...fleet, batteries: [...fleet.batteries, { ...unknown, row: 900 }] });
    const own = made.units.find(({ battery: { row } }) => row === 900)!;
    const chances = made.units
      .filter((unit) => likes.some(({ row }) => row === unit.battery.row))
      .map(({ chance12 }) => chance12!);
    expect(made.ageUnknown).toBe(1);
    expect(own.chance12).toBeCloseTo(sum(chances) / chances.length, 2);
  });

  it('removals without a stated cause are good, with the other reading beside it', () => {
    const lives = fleet.lives.map((each) =>
      each.meaning === 'good' ? { ...each, meaning: 'notSaid' as const } : each,
    );
    const made = planned({}, { ...fleet, lives });
    expect(made.life.failures).toBe(planned().life.failures);
    expect(made.life.ifNotSaidFailed!.median).toBeLessThan(made.life.median);
    expect(planned().life.ifNotSaidFailed).toBeUndefined();
  });

  it('under five failures the prior carries part of the answer and says so', () => {
    const lives = fleet.lives
      .filter(({ meaning }) => meaning === undefined)
      .concat([life(500, 30, { removed: AS_OF - 40, meaning: 'failed' })]);
    expect(planned({}, { ...fleet, lives }).life).toMatchObject({ basis: 'prior and data', failures: 1 });
  });

  it('least cost plans a renewal only where a failure costs enough more', () => {
    const money = { ...DEFAULT_PLAN_SETTINGS.money, unitPrice: 400 };
    expect(planned({ policy: 'leastCost', money: { ...money, failureCost: 4000 } }).plannedAge).toBeLessThan(
      60,
    );
    expect(planned({ policy: 'leastCost', money: { ...money, failureCost: 0 } }).plannedAge).toBe(Infinity);
  });

  it('spreads what is above the planned age already over the months that were given', () => {
    const firstYear = (overdueMonths: number): number =>
      planned({ policy: { age: 48 }, overdueMonths }).horizons[0]!.expected;
    const overdue = fleet.batteries.filter(
      ({ whereabouts, ageMonths = 0 }) => whereabouts === 'inService' && ageMonths > 48,
    ).length;
    expect(overdue).toBeGreaterThan(20);
    expect(firstYear(0)).toBeGreaterThanOrEqual(firstYear(12));
    // Two thirds of them wait longer than a year, but for those that fail meanwhile.
    expect(firstYear(12) - firstYear(36)).toBeGreaterThan(overdue / 3);
    expect(firstYear(12) - firstYear(36)).toBeLessThan((2 * overdue) / 3 + 1);
  });

  it('refuses what it can not plan', () => {
    const settings = { ...DEFAULT_PLAN_SETTINGS, policy: 'leastCost' as const };
    expect(plan(fleet.batteries, fleet.lives, { asOf: AS_OF, settings })).toMatchObject({
      problem: { because: 'leastCostNeedsCosts' },
    });
    expect(plan([], [], { asOf: AS_OF })).toMatchObject({
      ok: false,
      problem: { kind: 'notEnoughData', because: 'noAges' },
    });
  });

  it('fleet changes: a new place takes a battery, a given-up one its share of the failures', () => {
    const change = (month: string, count: number) => ({ month, count, site: '', type: '' });
    const plain = planned();
    const more = planned({ fleetChanges: [change('2027-03', 6)] });
    expect(more.years.map(({ fleetChange }) => fleetChange)).toEqual([0, 6, 0]);
    expect(more.years[1]!.order.need).toBeCloseTo(plain.years[1]!.order.need + 6, 9);
    const fewer = planned({ fleetChanges: [change('2027-01', -60)] });
    // Half of the 120 places: half of the year's failures.
    expect(fewer.years[1]!.fleetChange).toBeCloseTo(-plain.years[1]!.expected / 2, 1);
  });

  it('good mates of renewed sets come back by the share that is used again', () => {
    const none = planned({ wholeSets: true });
    const half = planned({ wholeSets: true, matesReused: 0.5 });
    expect(none.years[1]!.mates).toBeGreaterThan(0);
    expect(half.years[1]!.order.recovered).toBe(roundedTo(0.5 * half.years[1]!.mates, 1));
    expect(planned().years[1]!.mates).toBe(0);
  });

  it('says what share of the coming failures lies beyond the oldest one on record', () => {
    // The oldest failure came at 78 months; some of the fleet pass that age within a year.
    expect(planned().life.oldestFailure).toBeCloseTo(78, 0);
    expect(planned().extrapolated).toBeGreaterThan(0);
    expect(planned().extrapolated).toBeLessThan(0.5);
    const young = fleet.lives.filter(({ meaning }) => meaning === undefined);
    expect(planned({}, { ...fleet, lives: young }).extrapolated).toBe(1);
  });

  it('is tried on its own past, with what then happened beside it', () => {
    const trials = planned().ownPast;
    expect(trials.map(({ years }) => years)).toEqual([1, 2]);
    for (const { low, high, happened, inside } of trials)
      expect(inside).toBe(happened >= low && happened <= high);
  });

  it('names a planted bad lot and no other group', () => {
    const bad = Array.from({ length: 8 }, (_, i) =>
      life(300 + i, 4 + i, { removed: AS_OF - 40 * i, meaning: 'failed', lot: '417', vehicle: '' }),
    );
    const { standsOut } = planned({}, { ...fleet, lives: [...fleet.lives, ...bad] });
    expect(standsOut.map(({ kind, name }) => `${kind} ${name}`)).toContain('lot 9ZZ98 417');
    expect(standsOut.every(({ kind }) => kind === 'lot')).toBe(true);
    expect(planned().standsOut).toEqual([]);
  });

  it('the funding table rises from hopeless to certain', () => {
    const { rows, until } = planned().funding;
    expect(until).toBe('FY2027');
    expect(rows[0]!.chance).toBeLessThan(0.05);
    expect(rows.at(-1)!.chance).toBeGreaterThan(0.99);
    for (let i = 1; i < rows.length; i += 1) {
      expect(rows[i]!.chance).toBeGreaterThanOrEqual(rows[i - 1]!.chance);
      expect(rows[i]!.missing).toBeLessThanOrEqual(rows[i - 1]!.missing);
    }
  });
});

describe('isUsableStock', () => {
  it('is on the shelf, good or never tested, and not overdue for charge', () => {
    const stock = battery(1, { whereabouts: 'inStock' });
    expect(isUsableStock(stock, AS_OF)).toBe(true);
    expect(isUsableStock({ ...stock, verdict: 'Serviceable', chargeBy: AS_OF }, AS_OF)).toBe(true);
    expect(isUsableStock({ ...stock, verdict: 'Awaiting charge' }, AS_OF)).toBe(false);
    expect(isUsableStock({ ...stock, chargeBy: AS_OF - 1 }, AS_OF)).toBe(false);
    expect(isUsableStock(battery(1), AS_OF)).toBe(false);
  });
});
