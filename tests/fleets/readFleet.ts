import { readFileSync } from 'node:fs';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import type { LifeRecord } from '../../src/life/lifeRecord.ts';
import { collapseRecords } from '../../src/life/lifeRecord.ts';
import type { AgeBin } from '../../src/planning/ageBins.ts';
import { ageBins } from '../../src/planning/ageBins.ts';
import figures from './fleets.json' with { type: 'json' };

/** Figures of the ten simulated fleets: their truth, what happened next, and a separate program's counts. */
export const fleets = figures.fleets;
export type FleetFigures = (typeof fleets)[number];

/** A fleet's lives and the ages of its batteries in service, all or of one site. */
export type Fleet = { readonly records: LifeRecord[]; readonly bins: AgeBin[]; readonly sites: string[] };

/** One of the ten fleets, read from its rows of units. */
export function readFleet({ fleet, asOf }: FleetFigures, site?: string): Fleet {
  const text = readFileSync(new URL(`${fleet}.csv`, import.meta.url), 'utf8');
  const all = text.trim().split('\n').slice(1);
  const units = all.map((line) => line.split(',')).filter((cells) => site === undefined || cells[1] === site);
  const records = units.map((cells) => lifeOf(cells, asOf));
  const inService = units
    .filter((cells) => cells[5] === '')
    .map(([, , , installed]) => months(installed!, asOf));
  return {
    records: collapseRecords(records),
    bins: ageBins(inService),
    sites: [...new Set(all.map((line) => line.split(',')[1]!))].sort(),
  };
}

function lifeOf([, , , installed, seen, removed, reason]: string[], asOf: string): LifeRecord {
  const age = months(installed!, removed === '' ? asOf : removed!);
  const kind = reason === 'failed' ? 'exact' : 'right';
  return { entry: months(installed!, seen!), from: age, to: age, kind, count: 1 };
}

const months = (from: string, to: string): number =>
  (Date.parse(to) - Date.parse(from)) / 86_400_000 / DAYS_PER_MONTH;
