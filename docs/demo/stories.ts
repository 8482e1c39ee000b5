import type { Day } from '../../src/basics/calendar.ts';
import { verdict } from '../../src/cranking/verdict.ts';
import type { VerdictWord } from '../../src/service/battery.ts';
import type { Chance } from './chance.ts';
import { chanceFrom } from './chance.ts';
import type { DemoBattery, Stint } from './fleet.ts';
import { latestStint, watchedFrom } from './register.ts';
import type { Reading } from './readings.ts';
import { lifeSpent, readBattery, restVolts } from './readings.ts';
import type { Site } from './service.ts';
import { AS_OF, BATTERY_KINDS } from './service.ts';

/** A line of sheet Tests. */
export type DemoTest = Reading & {
  readonly battery: DemoBattery;
  readonly stint: Stint | undefined;
  readonly day: Day;
  readonly hoursAtRest: number;
  readonly retest: 0 | 1 | 2;
  readonly damage?: string;
  readonly verdict: VerdictWord;
  readonly tester: string;
  readonly initials: string;
};

/** A line of sheet Charges. */
export type DemoCharge = {
  readonly battery: DemoBattery;
  readonly site: Site;
  readonly day: Day;
  readonly hours: number;
  readonly ampsAtEnd: number;
  readonly voltsAfter: number;
  readonly full: boolean;
  readonly initials: string;
};

/** Every test and charge that was written down. */
export type Stories = { readonly tests: readonly DemoTest[]; readonly charges: readonly DemoCharge[] };

/** What draws the chances and writes down what happens. */
export type Teller = {
  readonly chance: Chance;
  readonly tests: DemoTest[];
  readonly charges: DemoCharge[];
};

const INITIALS = ['AK', 'BR', 'DV', 'EL', 'HN', 'JT', 'MS', 'OW'];

/** What was tested and charged: a share of those in service, most of the stock, and many of those that failed. */
export function tellStories(seed: number, batteries: readonly DemoBattery[]): Stories {
  const teller: Teller = { chance: chanceFrom(seed), tests: [], charges: [] };
  for (const battery of batteries) tellOf(teller, battery);
  teller.tests.sort((a, b) => a.day - b.day);
  teller.charges.sort((a, b) => a.day - b.day);
  return teller;
}

function tellOf(teller: Teller, battery: DemoBattery): void {
  const { chance } = teller;
  const stint = latestStint(battery);
  if (battery.shelf !== undefined) return tellOfStock(teller, battery, battery.shelf.site);
  if (stint === undefined) return;
  if (stint.to === undefined && chance.happens(0.34)) return tellOfService(teller, battery, stint);
  if (stint.cause === 'failed' && chance.happens(0.4)) return tellOfFailure(teller, battery, stint);
}

function tellOfService(teller: Teller, battery: DemoBattery, stint: Stint): void {
  const { chance } = teller;
  const old = chance.happens(0.07);
  const last = AS_OF - (old ? chance.whole(380, 600) : Math.min(chance.whole(6, 330), chance.whole(6, 330)));
  const yearBefore = last - chance.whole(300, 400);
  if (yearBefore > Math.max(stint.from + 60, watchedFrom(stint.vehicle.site)) && chance.happens(0.5))
    testOnce(teller, battery, stint, yearBefore, usualCharge(chance), 0);
  if (last < stint.from + 20) return;
  const first = testOnce(teller, battery, stint, last, usualCharge(chance), 0);
  if (first.verdict === 'Awaiting charge') followUp(teller, battery, stint, last);
}

// One in seven is found discharged; the others are charged well enough to be judged.
const usualCharge = (chance: Chance): number =>
  chance.happens(0.14) ? chance.between(0.42, 0.72) : Math.min(1, Math.max(0.78, chance.bell(0.9, 0.05)));
const FULL = 0.985;

function followUp(teller: Teller, battery: DemoBattery, stint: Stint, failedOn: Day): void {
  const { chance } = teller;
  const chargedOn = failedOn + chance.whole(1, 5);
  if (chargedOn > AS_OF || chance.happens(0.2)) return;
  const full = chargeOnce(teller, battery, stint.vehicle.site, chargedOn);
  const retestOn = chargedOn + chance.whole(1, 4);
  if (!full || retestOn > AS_OF || chance.happens(0.2)) return;
  const again = testOnce(teller, battery, stint, retestOn, FULL, 1);
  if (again.verdict !== 'Condemned' || chance.happens(0.7)) return;
  const secondCharge = retestOn + chance.whole(2, 6);
  if (secondCharge + 2 > AS_OF) return;
  if (chargeOnce(teller, battery, stint.vehicle.site, secondCharge))
    testOnce(teller, battery, stint, secondCharge + 2, FULL, 2);
}

function tellOfFailure(teller: Teller, battery: DemoBattery, stint: Stint): void {
  const { chance } = teller;
  const retestOn = stint.to! - chance.whole(0, 12);
  const chargedOn = retestOn - chance.whole(1, 3);
  const firstOn = chargedOn - chance.whole(1, 6);
  if (firstOn < Math.max(stint.from + 10, watchedFrom(stint.vehicle.site))) return;
  const low = chance.happens(0.3) ? chance.between(0.3, 0.7) : chance.between(0.78, 0.92);
  if (testOnce(teller, battery, stint, firstOn, low, 0).verdict !== 'Awaiting charge') return;
  if (chargeOnce(teller, battery, stint.vehicle.site, chargedOn))
    testOnce(teller, battery, stint, retestOn, FULL, 1);
}

function tellOfStock(teller: Teller, battery: DemoBattery, site: Site): void {
  const { chance } = teller;
  if (!chance.happens(0.7)) return;
  const used = battery.stints.length > 0;
  const day = Math.max(battery.shelf!.since + 3, AS_OF - chance.whole(5, 200));
  if (chance.happens(0.6)) chargeOnce(teller, battery, site, day - 2);
  if (used ? chance.happens(0.5) : chance.happens(0.8))
    testOnce(teller, battery, undefined, day, chance.between(0.8, 0.99), 0, site);
}

/** One test of a battery, written down. */
export function testOnce(
  teller: Teller,
  battery: DemoBattery,
  stint: Stint | undefined,
  day: Day,
  charge: number,
  retest: 0 | 1 | 2,
  site: Site = stint!.vehicle.site,
): DemoTest {
  const { chance } = teller;
  const reading = readBattery(chance, battery, stint ?? latestStint(battery), site, day, charge);
  const test: DemoTest = {
    ...reading,
    battery,
    stint,
    day,
    retest,
    hoursAtRest: chance.pick([3, 4, 8, 8, 10, 12, 24]),
    verdict: verdictOf(battery, reading, retest),
    tester: chance.pick(['tester 1', 'tester 2', 'tester 3']),
    initials: chance.pick(INITIALS),
  };
  teller.tests.push(test);
  return test;
}

function verdictOf(battery: DemoBattery, reading: Reading, retest: 0 | 1 | 2): VerdictWord {
  const { amps, loadVolts, ...rest } = reading;
  const { construction } = BATTERY_KINDS[battery.kind];
  const judged = verdict({ ...rest, reading: amps ?? loadVolts!, retest, construction });
  if (!judged.ok) throw new Error('the demonstration made a test that can not be judged');
  return judged.value;
}

function chargeOnce(teller: Teller, battery: DemoBattery, site: Site, day: Day): boolean {
  const { chance } = teller;
  const full = chance.happens(0.93);
  teller.charges.push({
    battery,
    site,
    day,
    full,
    hours: chance.whole(6, 22),
    ampsAtEnd: full ? chance.pick([0.4, 0.6, 0.7, 0.8, 0.9]) : chance.pick([2.1, 3.4, 5]),
    voltsAfter: restVolts(chance, battery, full ? FULL : 0.8, 15),
    initials: chance.pick(INITIALS),
  });
  return full;
}

/** The tests of each battery, oldest first. */
export function testsByBattery(tests: readonly DemoTest[]): ReadonlyMap<DemoBattery, readonly DemoTest[]> {
  const byBattery = new Map<DemoBattery, DemoTest[]>();
  for (const test of tests) byBattery.set(test.battery, [...(byBattery.get(test.battery) ?? []), test]);
  return byBattery;
}

/** Share of life spent at as-of, for the truth that the generator tells. */
export function spentAtAsOf(battery: DemoBattery, stint: Stint): number {
  return lifeSpent(battery, stint, AS_OF);
}
