import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { settingsFrom } from '../../src/inventory/settings.ts';
import type { OddGroup } from '../../src/life/standsOut.ts';
import type { Plan } from '../../src/planning/plan.ts';
import { plan } from '../../src/planning/plan.ts';
import { planOwnPast, planStandsOut } from '../../src/planning/planEvidence.ts';
import { planFile } from '../../taskpane/headless.ts';
import { readWorkbookFile } from '../../taskpane/host/xlsx/workbookFile.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { inventoryFrom } from '../inventory/sheets.ts';
import { AS_OF, BAD_LOT, BAD_VEHICLE, plantedRows } from './plantedRows.ts';

const layouts = { '9ZZ98': 'MMyy-lot', '9ZZ97': 'MMyy-lot', '9ZZ96': 'MMyy-lot' };
const settings = valueOf(settingsFrom({ recordsSince: '2019-01-01', layouts }));

function planted(seed: number, what: { lot: boolean; vehicle: boolean }): Plan {
  const { batteries, lives } = inventoryFrom(plantedRows(seed, what), { asOf: AS_OF, settings });
  return valueOf(plan(batteries, lives, { asOf: AS_OF, settings, prior: settings.prior }));
}

const names = (found: readonly OddGroup[]): string[] =>
  found.map(({ kind, name }) => `${kind} ${name}`).sort();

const LOT = `lot ${BAD_LOT.maker} ${BAD_LOT.lot}`;
const VEHICLE = `vehicle ${BAD_VEHICLE.vehicle} (${BAD_VEHICLE.site})`;

describe('what stands out of an inventory', () => {
  it('with a bad lot and a bad vehicle is these two and no others', () => {
    const { standsOut } = planted(1, { lot: true, vehicle: true });
    expect(names(standsOut)).toEqual([LOT, VEHICLE]);
    for (const { failures, expected } of standsOut) expect(failures).toBeGreaterThan(3 * expected);
  });

  it.each([
    [{ lot: true, vehicle: false }, [LOT]],
    [{ lot: false, vehicle: true }, [VEHICLE]],
    [{ lot: false, vehicle: false }, []],
  ] as const)('with %j is what was planted', (what, found) => {
    expect(names(planted(1, what).standsOut)).toEqual(found);
  });

  it('is found whichever way chance falls, with hardly a false name', () => {
    const seeds = Array.from({ length: 10 }, (_, index) => 11 + index);
    const found = seeds.map((seed) => {
      const { lives } = inventoryFrom(plantedRows(seed, { lot: true, vehicle: true }), {
        asOf: AS_OF,
        settings,
      });
      return names(planStandsOut(lives, new Set()));
    });
    for (const each of found) expect(each).toEqual(expect.arrayContaining([LOT, VEHICLE]));
    expect(found.filter(({ length }) => length > 2).length).toBeLessThanOrEqual(1);
  });
});

describe('the demonstration inventory', () => {
  async function demoPlan() {
    const file = (name: string) => readFile(new URL(`../../docs/demo/${name}`, import.meta.url));
    const workbook = valueOf(
      await readWorkbookFile(await file('norrfell-inventory.xlsx'), 'norrfell-inventory.xlsx'),
    );
    const given: unknown = JSON.parse((await file('norrfell-settings.json')).toString('utf8'));
    return valueOf(planFile(workbook, valueOf(settingsFrom(given)), AS_OF));
  }

  it('names its bad lot; its bad vehicle has too few early failures to be told from chance', async () => {
    const { plan: made } = await demoPlan();
    expect(names(made.standsOut)).toEqual(['lot 9ZZ98 417']);
    expect(made.standsOut[0]!.failures).toBeGreaterThan(5 * made.standsOut[0]!.expected);
  });

  it('is tried on its own past, where what is due now does not count as removed', async () => {
    const { plan: made, inventory } = await demoPlan();
    const [oneYear, twoYears] = made.ownPast;
    expect([oneYear!.years, twoYears!.years]).toEqual([1, 2]);
    const since = (day: number): number =>
      inventory.lives.filter(
        ({ removed, meaning, watchedFrom, to, entry }) =>
          meaning === 'failed' && removed! > day && watchedFrom <= day && to > entry,
      ).length;
    expect(oneYear!.happened).toBe(since(oneYear!.madeOn));
    expect(twoYears!.happened).toBe(since(twoYears!.madeOn));
    expect(oneYear!.inside).toBe(true);
  });
});

describe('an inventory whose record is as old as its vehicles', () => {
  it('comes out inside its own band in most years', () => {
    const seeds = Array.from({ length: 6 }, (_, index) => 31 + index);
    const trials = seeds.flatMap((seed) => {
      const rows = plantedRows(seed, { lot: false, vehicle: false });
      const { lives } = inventoryFrom(rows, { asOf: AS_OF, settings });
      return valueOf(planOwnPast(lives, AS_OF, settings.prior));
    });
    expect(trials).toHaveLength(12);
    expect(trials.filter(({ inside }) => inside).length).toBeGreaterThanOrEqual(9);
  });
});
