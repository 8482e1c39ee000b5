import { chanceFrom } from './chance.ts';
import { latestStint, watchedFrom } from './register.ts';
import { AS_OF } from './service.ts';
import type { DemoTest, Teller } from './stories.ts';
import { testOnce, testsByBattery } from './stories.ts';

/** These stations test every year and keep the lines; the others write down what they come to. */
const YEARLY_STATIONS = ['Norrfell Main', 'Isvarg Pass', 'Kaldmoor', 'Brattmyr', 'Fonnlia', 'Hrimdal'];

/** A battery whose last test is older than this has dropped out of the round [days]. */
const LATEST = 330;
/** Years before the last test that are on record. */
const YEARS = 5;

/**
 * The tests with those of the years before beside them, for batteries still in service at the stations that test every
 * year. They are older than a year, so that no verdict rests on them: they tell where a battery is going.
 */
export function withYearlyTests(seed: number, tests: readonly DemoTest[]): readonly DemoTest[] {
  const teller: Teller = { chance: chanceFrom(seed), tests: [], charges: [] };
  for (const known of testsByBattery(tests).values()) tellYears(teller, known);
  return [...tests, ...teller.tests].sort((a, b) => a.day - b.day);
}

function tellYears(teller: Teller, known: readonly DemoTest[]): void {
  const { battery, day, verdict } = known.at(-1)!;
  const stint = latestStint(battery);
  if (stint === undefined || stint.to !== undefined || battery.shelf !== undefined) return;
  const { site } = stint.vehicle;
  if (!YEARLY_STATIONS.includes(site.name) || verdict !== 'Serviceable' || day < AS_OF - LATEST) return;
  for (let year = YEARS; year > 0; year -= 1) {
    const on = day - 365 * year + teller.chance.whole(-15, 15);
    const isNear = known.some((test) => Math.abs(test.day - on) < 200);
    const isOnRecord = on > Math.max(stint.from + 60, watchedFrom(site)) && on < AS_OF - 380;
    if (isOnRecord && !isNear) testOnce(teller, battery, stint, on, teller.chance.between(0.86, 0.98), 0);
  }
}
