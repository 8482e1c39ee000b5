import { dayFromParts, dayParts } from '../../src/basics/calendar.ts';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';
import type { Row } from '../inventory/sheets.ts';

/** The day of the planted inventory, and the day since which its removals are written down. */
export const AS_OF = dayFromParts(2026, 6, 30)!;
const RECORDS_SINCE = dayFromParts(2019, 1, 1)!;

/** What is planted: a lot of one maker, and a vehicle that spoils its batteries. */
export const BAD_LOT = { maker: '9ZZ98', lot: '417' };
export const BAD_VEHICLE = { site: 'East', vehicle: 'NF-037' };

const SITES = ['North', 'East', 'Pass', 'Fjord'];
const MAKERS = ['9ZZ98', '9ZZ97', '9ZZ96'];
const VEHICLES = 120;
const PLACES = 3;

type Planted = { readonly lot: boolean; readonly vehicle: boolean };

/** An inventory of 120 vehicles with three batteries each and their forerunners, with what is asked for planted in it. */
export function plantedRows(seed: number, planted: Planted): Row[] {
  const uniform = uniformNumbers(seed);
  const rows: Row[] = [];
  for (let place = 0; place < VEHICLES * PLACES; place += 1) {
    const home = homeOf(Math.floor(place / PLACES));
    const isBad = planted.vehicle && home.vehicle === BAD_VEHICLE.vehicle;
    let installed = RECORDS_SINCE + 40 * DAYS_PER_MONTH * uniform();
    while (installed < AS_OF) {
      const made = madeOf(uniform, installed);
      const isLot = planted.lot && made.maker === BAD_LOT.maker && made.lot === BAD_LOT.lot;
      const age = weibullLife(uniform, 2.4, isBad ? 11 : isLot ? 16 : 62);
      const removed = installed + age * DAYS_PER_MONTH;
      rows.push(rowOf(rows.length, home, made, installed, removed));
      installed = removed + 1;
    }
  }
  return rows;
}

type Home = { readonly site: string; readonly vehicle: string };
type Made = { readonly maker: string; readonly lot: string; readonly code: string };

function homeOf(number: number): Home {
  return { site: SITES[number % SITES.length]!, vehicle: `NF-${String(number).padStart(3, '0')}` };
}

// Twelve lots for each maker; what is in stock when a battery is needed is chance.
function madeOf(uniform: () => number, installed: number): Made {
  const maker = MAKERS[Math.floor(uniform() * MAKERS.length)]!;
  const lot = String(410 + Math.floor(uniform() * 12));
  const { year, month } = dayParts(installed - 60 - 120 * uniform());
  return {
    maker,
    lot,
    code: `${String(month).padStart(2, '0')}${String(year % 100).padStart(2, '0')}-${lot}`,
  };
}

function rowOf(number: number, home: Home, { maker, code }: Made, installed: number, removed: number): Row {
  const isOut = removed <= AS_OF;
  return {
    ...{ Serial: `P${10_000 + number}`, Maker: maker, Type: '6T AGM', 'Date code': code },
    ...{ Site: home.site, Vehicle: home.vehicle, Installed: Math.round(installed) },
    ...{ Removed: isOut ? Math.round(removed) : null, Reason: isOut ? 'failed' : null },
  };
}
