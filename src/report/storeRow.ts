import { readsVolts } from '../inventory/storeSets.ts';
import type { Battery } from '../service/battery.ts';
import { cell } from './draft.ts';
import type { SheetCell } from './sheet.ts';

/** The columns that every block of the store list shares, so that they are printed once on each page. */
export const STORE_HEADS = [
  'Serial',
  'Site',
  'Place',
  'Type',
  'Made',
  'Tested',
  'Charge by',
  'Rest volts',
  'Reading',
  'Why and what to do',
  'Done',
];

/** A battery as a row of the store list, with what is to be done about it and room for a tick. */
export function storeRow(battery: Battery, note: string): SheetCell[] {
  const { made, chargeBy, readings = {} } = battery;
  const { reading } = readings;
  const isVolts = reading !== undefined && readsVolts(reading);
  return [
    cell(battery.serial === '' ? `row ${battery.row}` : battery.serial),
    cell(battery.site),
    cell(placeText(battery)),
    cell(battery.type),
    cell(made ?? '', 'body', 'date'),
    cell(readings.testedOn ?? '', 'body', 'date'),
    cell(chargeBy ?? '', 'body', 'date'),
    cell(readings.restVolts ?? '', 'body', 'volts'),
    cell(reading ?? '', 'body', isVolts ? 'volts' : 'whole'),
    cell(note, 'wrapped'),
    cell(''),
  ];
}

const placeText = ({ whereabouts, vehicle, storagePlace = '' }: Battery): string =>
  whereabouts === 'inService' ? vehicle : storagePlace;
