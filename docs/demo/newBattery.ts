import type { Day } from '../../src/basics/calendar.ts';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import { dayFromParts } from '../../src/basics/calendar.ts';
import type { Chance } from './chance.ts';
import type { DemoBattery } from './fleet.ts';
import { codeAndLot, madeBy, serialGiver } from './labels.ts';
import type { BatteryKind, BatteryKindName, Site } from './service.ts';
import { AS_OF, BAD_LOT, BATTERY_KINDS, TRUTH } from './service.ts';

// A year digit alone repeats after ten years, so the makers who write one are known to have begun here.
const EARLIEST_MADE = dayFromParts(2016, 8, 3)!;

const STOCK_KINDS: readonly { readonly kind: BatteryKindName; readonly weight: number }[] = [
  { kind: '6T AGM', weight: 70 },
  { kind: '6T flooded', weight: 12 },
  { kind: '95 Ah flooded', weight: 8 },
  { kind: '95 Ah AGM', weight: 6 },
  { kind: 'Gel 110 Ah', weight: 4 },
];

/** A maker of new batteries: to fit on a day, or to lie on a shelf at as-of. */
export type BatteryMaker = {
  readonly fresh: (kind: BatteryKindName, fittedOn: Day) => DemoBattery;
  readonly stocked: (site: Site) => DemoBattery;
};

/** The one that makes the demonstration's batteries; it remembers serials and how many of the bad lot are out. */
export function batteryMaker(chance: Chance): BatteryMaker {
  const serial = serialGiver(chance);
  let badOnes = 0;
  const make = (kind: BatteryKindName, out: Day, monthsOnShelf: number): DemoBattery => {
    const { makers, lifeFactor }: BatteryKind = BATTERY_KINDS[kind];
    const maker = chance.weighted(makers).code;
    const bad = badOnes < BAD_LOT.most && maker === BAD_LOT.maker && badLotFits(out) && chance.happens(0.4);
    if (bad) badOnes += 1;
    const onShelf = Math.max(EARLIEST_MADE, Math.floor(out - monthsOnShelf * DAYS_PER_MONTH));
    const made = bad ? badLotMade() : madeBy(maker, onShelf);
    const lifeMonths = chance.life(TRUTH.shape, TRUTH.scale) * lifeFactor * (bad ? BAD_LOT.lifeFactor : 1);
    return {
      kind,
      maker,
      made,
      ...codeAndLot(maker, made, bad),
      serial: serial(maker),
      lifeMonths,
      usedMonths: 0,
      stints: [],
    };
  };
  return {
    fresh: (kind, fittedOn) => make(kind, fittedOn, shelfBeforeFitting(chance)),
    stocked: (site) => ({
      ...make(chance.weighted(STOCK_KINDS).kind, AS_OF, shelfOfStock(chance)),
      shelf: { site, since: AS_OF - chance.whole(20, 300) },
    }),
  };
}

const badLotMade = (): Day => dayFromParts(BAD_LOT.year, BAD_LOT.month, 9)!;
const badLotFits = (day: Day): boolean => day > badLotMade() + 45 && day < badLotMade() + 260;

const shelfBeforeFitting = (chance: Chance): number =>
  chance.happens(0.04) ? chance.between(12.5, 20) : Math.min(11, Math.max(0.7, chance.bell(4.5, 2)));

const shelfOfStock = (chance: Chance): number =>
  chance.happens(0.12) ? chance.between(20, 33) : chance.between(2, 14);
