import type { Day } from '../../src/basics/calendar.ts';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import type { Chance } from './chance.ts';
import { chanceFrom } from './chance.ts';
import { batteryMaker } from './newBattery.ts';
import type { BatteryKindName, Site, VehicleKind } from './service.ts';
import {
  AS_OF,
  BAD_VEHICLE,
  FIRST_INSTALL,
  OTHER_REMOVALS_A_MONTH,
  SITES,
  VEHICLE_KINDS,
} from './service.ts';

/** Why a battery was taken off, as the generator knows it. */
export type Cause = 'failed' | 'wholeSet' | 'planned' | 'vehicleGone' | 'stolen' | 'accident' | 'damaged';

/** A vehicle of the service. */
export type Vehicle = {
  readonly name: string;
  readonly kind: VehicleKind;
  readonly site: Site;
  readonly from: Day;
  readonly goneOn: Day;
  /** How long batteries last in it against others: below 1 = its charging system ruins them. */
  readonly lifeFactor: number;
};

/** One stay of a battery in a vehicle. */
export type Stint = {
  readonly vehicle: Vehicle;
  readonly place: number;
  readonly from: Day;
  readonly to?: Day;
  readonly cause?: Cause;
};

/** A battery with its whole story; only the generator knows `lifeMonths`. */
export type DemoBattery = {
  readonly kind: BatteryKindName;
  readonly maker: string;
  readonly made: Day;
  readonly code: string;
  readonly lot: string;
  readonly serial: string;
  readonly lifeMonths: number;
  /** Months of its life already spent, in the same units. */
  usedMonths: number;
  readonly stints: Stint[];
  /** Where it lies at as-of, when it lies on a shelf. */
  shelf?: { readonly site: Site; readonly since: Day };
};

type Place = {
  readonly vehicle: Vehicle;
  readonly place: number;
  battery: DemoBattery;
  since: Day;
  failsOn: Day;
  leavesOn: Day;
};

type State = {
  readonly chance: Chance;
  readonly make: ReturnType<typeof batteryMaker>;
  readonly batteries: DemoBattery[];
  readonly places: Place[];
  /** Good used batteries waiting on a shelf. */
  readonly used: DemoBattery[];
  readonly vehiclesNamed: Map<string, number>;
};

// Half of the other removals take a whole vehicle's batteries along, half one battery.
const VEHICLES_GONE_A_MONTH = OTHER_REMOVALS_A_MONTH / 2;
const BATTERIES_LEAVING_A_MONTH = OTHER_REMOVALS_A_MONTH / 2;
const LEAVING: readonly { readonly cause: Cause; readonly weight: number }[] = [
  { cause: 'planned', weight: 45 },
  { cause: 'stolen', weight: 20 },
  { cause: 'accident', weight: 20 },
  { cause: 'damaged', weight: 15 },
];

/** Every battery the service ever had, up to as-of, from a seed. */
export function simulateFleet(seed: number): readonly DemoBattery[] {
  const chance = chanceFrom(seed);
  const state: State = {
    chance,
    make: batteryMaker(chance),
    batteries: [],
    places: [],
    used: [],
    vehiclesNamed: new Map(),
  };
  firstVehicles(state);
  for (let next = earliest(state); next.day <= AS_OF; next = earliest(state)) settle(state, next.place);
  stockShelves(state);
  return state.batteries;
}

function firstVehicles(state: State): void {
  let ruinous = false;
  for (const kind of VEHICLE_KINDS) {
    for (let count = 0; count < kind.weight; count += 1) {
      const site = state.chance.weighted(SITES);
      const months = state.chance.happens(0.65) ? [0, 23] : [24, 66];
      const from = Math.round(FIRST_INSTALL + state.chance.between(months[0]!, months[1]!) * DAYS_PER_MONTH);
      const ruins: boolean = !ruinous && site.name === BAD_VEHICLE.site && kind.name === BAD_VEHICLE.kind;
      ruinous ||= ruins;
      addVehicle(state, kind, site, from, ruins ? BAD_VEHICLE.lifeFactor : 1);
    }
  }
}

function addVehicle(state: State, kind: VehicleKind, site: Site, from: Day, lifeFactor: number): void {
  const number = (state.vehiclesNamed.get(site.prefix) ?? 100) + 1;
  state.vehiclesNamed.set(site.prefix, number);
  const months = lifeFactor < 1 ? Infinity : state.chance.waiting(VEHICLES_GONE_A_MONTH);
  const goneOn = from + 1 + Math.floor(months * DAYS_PER_MONTH);
  const vehicle = { name: `${site.prefix}-${number}`, kind, site, from, goneOn, lifeFactor };
  for (let place = 1; place <= kind.places; place += 1) {
    const battery = state.make.fresh(kind.battery, from);
    state.batteries.push(battery);
    state.places.push(fitted(state, { vehicle, place }, battery, from));
  }
}

const strain = (vehicle: Vehicle): number => vehicle.site.lifeFactor * vehicle.lifeFactor;

function fitted(
  state: State,
  where: Pick<Place, 'vehicle' | 'place'>,
  battery: DemoBattery,
  since: Day,
): Place {
  const monthsLeft = (battery.lifeMonths - battery.usedMonths) * strain(where.vehicle);
  const failsOn = since + Math.max(1, Math.round(monthsLeft * DAYS_PER_MONTH));
  const leaves = since + 1 + Math.floor(state.chance.waiting(BATTERIES_LEAVING_A_MONTH) * DAYS_PER_MONTH);
  return { ...where, battery, since, failsOn, leavesOn: Math.min(leaves, where.vehicle.goneOn) };
}

function earliest(state: State): { readonly day: Day; readonly place: Place } {
  let [first] = state.places;
  for (const place of state.places) if (dayOf(place) < dayOf(first!)) first = place;
  return { day: dayOf(first!), place: first! };
}

const dayOf = (place: Place): Day => Math.min(place.failsOn, place.leavesOn);

function settle(state: State, place: Place): void {
  const day = dayOf(place);
  if (day === place.vehicle.goneOn && place.failsOn > day) return vehicleLeaves(state, place.vehicle);
  const cause = place.failsOn <= day ? 'failed' : state.chance.weighted(LEAVING).cause;
  const whole = cause === 'failed' && state.chance.happens(place.vehicle.site.wholeSets);
  for (const mate of whole ? matesToRenew(state, place, day) : []) exchange(state, mate, day, 'wholeSet');
  exchange(state, place, day, cause);
}

const MATES_RENEWED_FROM_MONTHS = 18;

function matesToRenew(state: State, place: Place, day: Day): readonly Place[] {
  return state.places.filter(
    (mate) =>
      mate !== place &&
      mate.vehicle === place.vehicle &&
      day - mate.since >= MATES_RENEWED_FROM_MONTHS * DAYS_PER_MONTH,
  );
}

function takeOff(state: State, place: Place, day: Day, cause: Cause): void {
  const { battery, vehicle, since } = place;
  battery.stints.push({ vehicle, place: place.place, from: since, to: day, cause });
  battery.usedMonths += (day - since) / DAYS_PER_MONTH / strain(vehicle);
  const stillGood = cause === 'wholeSet' || cause === 'planned' || cause === 'vehicleGone';
  if (!stillGood || !state.chance.happens(0.5)) return;
  battery.shelf = { site: vehicle.site, since: day };
  state.used.push(battery);
}

function exchange(state: State, place: Place, day: Day, cause: Cause): void {
  takeOff(state, place, day, cause);
  const since = day + state.chance.whole(0, 3);
  const next = since > AS_OF ? undefined : replacement(state, place, since);
  const index = state.places.indexOf(place);
  if (next === undefined) state.places.splice(index, 1);
  else state.places[index] = fitted(state, place, next, since);
}

function replacement(state: State, place: Place, day: Day): DemoBattery {
  const { battery: kind } = place.vehicle.kind;
  const fits = (used: DemoBattery): boolean => used.kind === kind && used.shelf!.since + 20 <= day;
  const index = state.chance.happens(0.15) ? state.used.findIndex(fits) : -1;
  if (index >= 0) {
    const [used] = state.used.splice(index, 1);
    delete used!.shelf;
    return used!;
  }
  const fresh = state.make.fresh(kind, day);
  state.batteries.push(fresh);
  return fresh;
}

function vehicleLeaves(state: State, vehicle: Vehicle): void {
  const places = state.places.filter((place) => place.vehicle === vehicle);
  for (const place of places) takeOff(state, place, vehicle.goneOn, 'vehicleGone');
  for (const place of places) state.places.splice(state.places.indexOf(place), 1);
  const comes = vehicle.goneOn + state.chance.whole(5, 70);
  if (comes <= AS_OF - 5) addVehicle(state, vehicle.kind, vehicle.site, comes, 1);
}

// Three pairs stand with one battery: the other place is empty at as-of.
function emptyPlaces(places: readonly Place[]): readonly Place[] {
  const ofPairs = places.filter(
    ({ vehicle, battery, place }) => vehicle.kind.places === 2 && place === 2 && battery.stints.length === 0,
  );
  return [ofPairs[7]!, ofPairs[23]!, ofPairs[41]!];
}

/** A used battery that nobody took for so long was sent away, not kept. */
const USED_KEPT_DAYS = 400;

function stockShelves(state: State): void {
  const empty = emptyPlaces(state.places);
  for (const place of state.places) {
    if (empty.includes(place)) continue;
    const { vehicle, since } = place;
    place.battery.stints.push({ vehicle, place: place.place, from: since });
  }
  for (const used of state.used) if (used.shelf!.since < AS_OF - USED_KEPT_DAYS) delete used.shelf;
  for (const site of SITES) {
    const count = Math.round(site.weight * 0.85);
    for (let index = 0; index < count; index += 1) state.batteries.push(state.make.stocked(site));
  }
}
