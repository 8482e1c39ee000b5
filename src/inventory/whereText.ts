import type { Battery } from '../service/battery.ts';

/** Where a battery is, in words: "in stock at North, shelf B2", "in NF-12 at North", "removed". */
export function whereText({ whereabouts, site, vehicle, set, place, storagePlace }: Battery): string {
  const at = site === '' ? '' : ` at ${site}`;
  if (whereabouts === 'inStock') return `in stock${at}${storagePlace ? `, ${storagePlace}` : ''}`;
  const inVehicle = vehicle === '' ? '' : ` ${whereabouts === 'removed' ? 'from' : 'in'} ${vehicle}`;
  if (whereabouts === 'removed') return `removed${inVehicle}${at}`;
  const inSet = [set === '' || set === vehicle ? '' : `set ${set}`, place ? `place ${place}` : ''];
  return [`${inVehicle === '' ? 'in service' : inVehicle.trim()}${at}`, ...inSet].filter(Boolean).join(', ');
}
