import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { planCommand } from '../../taskpane/commandLine/planCommand.ts';
import { partsOf, sheetsByLibreOffice, withoutKeptValues } from './libreOffice.ts';

const demo = (name: string): string => fileURLToPath(new URL(`../../docs/demo/${name}`, import.meta.url));
const SHEETS = ['Forecast', 'Forecast units', 'Rows to check', 'Store list'];

type Json = { years: { label: string; expected: number; unitsToOrder: number; cost: number; net: number }[] };

describe('the forecast of the demonstration inventory, recalculated by LibreOffice', () => {
  const folder = mkdtempSync(join(tmpdir(), 'peer-'));
  const [out, json] = [join(folder, 'forecast.xlsx'), join(folder, 'plan.json')];
  let bytes: Uint8Array;
  let plan: Json;
  let [forecast, units, toCheck, store]: string[][][] = [];

  beforeAll(async () => {
    const settings = ['--settings', demo('norrfell-settings.json')];
    const files = ['--out', out, '--json', json];
    await planCommand([demo('norrfell-inventory.xlsx'), '--as-of', '2026-06-30', ...settings, ...files]);
    bytes = new Uint8Array(readFileSync(out));
    plan = JSON.parse(readFileSync(json, 'utf8')) as Json;
    [forecast, units, toCheck, store] = sheetsByLibreOffice(withoutKeptValues(bytes), SHEETS);
  });

  /** The rows by fiscal year under a heading. */
  const years = (heading: string): string[][] => {
    const start = forecast!.findIndex(([text]) => text!.startsWith(heading));
    const rows = forecast!.slice(start).filter(([text]) => plan.years.some(({ label }) => label === text));
    return rows.slice(0, plan.years.length);
  };

  it('shows no error value on any of its sheets', () => {
    const isError = (cell: string): boolean => /^(#|Err:)/.test(cell);
    expect([...forecast!, ...units!, ...store!].flat().filter(isError)).toEqual([]);
    // The inventory's own error cells are quoted as texts under "What stands there".
    const list = toCheck!.findIndex((row) => row.includes('What stands there'));
    const quoted = toCheck![list]!.indexOf('What stands there');
    expect(toCheck!.flatMap((row) => row.filter((cell, at) => at !== quoted && isError(cell)))).toEqual([]);
    expect(toCheck!.slice(0, list).flat().filter(isError)).toEqual([]);
  });

  it('has the totals of its own list of units', () => {
    expect(forecast!.flat()).toContain('agrees with the unit list');
    plan.years.forEach(({ label, expected }, year) => {
      const column = units![2]!.indexOf(`${label} expected`);
      const sum = units!.slice(3).reduce((all, row) => all + Number(row[column]), 0);
      expect(sum).toBeCloseTo(expected, 6);
      expect(Number(years('By fiscal year: batteries that')[year]![4])).toBeCloseTo(sum, 6);
    });
  });

  it('asks for what the plan says', () => {
    const request = years('The request').map((row) => [Number(row[2]), Number(Number(row[4]).toFixed(2))]);
    expect(request).toEqual(plan.years.map(({ unitsToOrder, net }) => [unitsToOrder, net]));
    const cost = years('By fiscal year: money').map((row) => Number(Number(row[2]).toFixed(2)));
    expect(cost).toEqual(plan.years.map((year) => year.cost));
  });

  it('holds two charts beside what the source had', () => {
    const charts = [...partsOf(bytes).keys()].filter((name) => /charts\/chart\d+\.xml$/.test(name));
    expect(charts.length).toBeGreaterThanOrEqual(2);
  });
});
