import { FROST_MARGIN_KELVIN } from '../cranking/verdict.ts';
import { chargeBand } from '../electrochemistry/chargeBand.ts';
import { freezingPoint } from '../electrochemistry/freezingPoint.ts';
import { restVoltage } from '../electrochemistry/restVoltage.ts';
import type { Battery, Construction } from '../service/battery.ts';

/** What is known about a place: the coldest and the average temperature [C], whether vehicles stand parked there. */
export type Place = {
  readonly coldest?: number;
  readonly average?: number;
  readonly heated: boolean;
  readonly parked: boolean;
};

/** The places that the settings know, by name. */
export type NamedPlaces = Readonly<Record<string, Place>>;

/** Where a battery may freeze: the freezing point of acid as weak as its reading allows, and the coldest there [C]. */
export type Frost = {
  readonly volts: number;
  readonly freezesAt: number;
  readonly coldest: number;
  /** True where the store of that place is heated: then it matters only where the battery stands outside. */
  readonly heated: boolean;
};

/** The place of a battery: that of its shelf where the settings name it, else its site. */
export function placeOf({ site, storagePlace = '' }: Battery, sites: NamedPlaces): Place | undefined {
  const named = (name: string): Place | undefined => (Object.hasOwn(sites, name) ? sites[name] : undefined);
  return named(storagePlace) ?? named(site);
}

/** Tells where a battery may freeze at its place; undefined where it does not, or too little is known to say. */
export function frostAt(battery: Battery, place: Place | undefined): Frost | undefined {
  const coldest = place?.coldest;
  const volts = battery.readings?.restVolts;
  if (coldest === undefined || volts === undefined || battery.charge === undefined) return undefined;
  const freezes = freezesAt(volts, battery.readings?.celsius, battery.construction);
  if (freezes === undefined || coldest >= freezes + FROST_MARGIN_KELVIN) return undefined;
  return { volts, freezesAt: freezes, coldest, heated: place?.heated === true };
}

// The freezing point at the low end of the charge band: acid that may be weaker than the reading says.
function freezesAt(
  volts: number,
  celsius: number | undefined,
  construction: Construction,
): number | undefined {
  const band = chargeBand(volts, celsius, construction);
  if (!band.ok) return band.problem.because === 'deadCell' ? 0 : undefined;
  const low = restVoltage(band.value.low, 25, construction);
  const point = low.ok ? freezingPoint(low.value, 25) : low;
  return point.ok ? point.value : undefined;
}
