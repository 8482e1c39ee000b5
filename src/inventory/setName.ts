import type { Battery } from '../service/battery.ts';

/** The set that a battery is in, named so that no two sets share a name; empty = in none. */
export type SetNamer = (battery: Battery) => string;

/** How sets are told apart: by the sheet's column for sets where it has one, else the batteries of a vehicle are one set. */
export function setNamer(hasSetColumn: boolean): SetNamer {
  return hasSetColumn ? setNamed : setOfVehicle;
}

const setOfVehicle: SetNamer = ({ vehicle }) => (vehicle === '' ? '' : `vehicle ${vehicle}`);

const setNamed: SetNamer = ({ set, vehicle, site }) => {
  if (set === '') return '';
  return set === vehicle || vehicle === '' ? `set ${set} ${site}`.trim() : `set ${set} of ${vehicle}`;
};

/** AGM, flooded or gel; a battery known by its own full rest voltage is an AGM one. */
export const plainConstruction = ({ construction }: Pick<Battery, 'construction'>): string =>
  typeof construction === 'number' ? 'AGM' : construction;

/** Months apart, in service or made, from which a set is to be looked at. Common practice. */
export const SET_MONTHS_APART = 12;
