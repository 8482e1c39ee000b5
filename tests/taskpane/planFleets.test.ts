import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { planCommand } from '../../taskpane/commandLine/planCommand.ts';
import { fleets } from '../fleets/readFleet.ts';

/**
 * Weibull shape and scale of each fleet by R 4.2.2 with flexsurv 2.0 (delayed entry, right censoring), computed
 * once outside the project. Ours may differ by 0.5 %, as the files' dates are whole days.
 */
const BY_R: Readonly<Record<string, readonly [shape: number, scale: number]>> = {
  fleet01: [2.34722, 61.0588],
  fleet02: [3.29423, 53.6212],
  fleet03: [1.87227, 76.0972],
  fleet04: [2.80297, 59.6985],
  fleet05: [2.17109, 66.9794],
  fleet06: [2.68006, 77.5608],
  fleet07: [3.89967, 38.0218],
  fleet08: [2.58893, 55.355],
  fleet09: [2.45114, 64.8644],
  fleet10: [2.72023, 58.9906],
};

const folder = mkdtempSync(join(tmpdir(), 'fleets-'));

type Json = {
  columns: Record<string, string>;
  rows: { read: number; used: number };
  life: { shape: number; scale: number; basis: string; failures: number };
};

async function planned(fleet: string, asOf: string, since: string): Promise<Json> {
  const file = fileURLToPath(new URL(`../fleets/${fleet}.csv`, import.meta.url));
  const json = join(folder, `${fleet}.json`);
  await planCommand([file, '--as-of', asOf, '--records-since', since, '--json', json]);
  return JSON.parse(readFileSync(json, 'utf8')) as Json;
}

describe('the ten simulated fleets, straight from their CSV', () => {
  it.each(fleets)('$fleet ($label)', async ({ fleet, asOf, recordStart, failed }) => {
    const { columns, rows, life } = await planned(fleet, asOf, recordStart);
    expect(columns).toMatchObject({
      serial: 'unit',
      site: 'site',
      installed: 'install_date',
      watchedSince: 'first_seen_date',
      removed: 'removed_date',
      cause: 'reason',
    });
    expect(rows.used).toBe(rows.read);
    // A battery that failed on the day on which it came under record was watched for no time at all.
    expect(Math.abs(life.failures - failed)).toBeLessThanOrEqual(2);
    const [shape, scale] = BY_R[fleet]!;
    if (life.basis === 'data') {
      expect(Math.abs(life.shape / shape - 1)).toBeLessThan(0.005);
      expect(Math.abs(life.scale / scale - 1)).toBeLessThan(0.005);
    } else expect(failed).toBeLessThan(5);
  });
});
