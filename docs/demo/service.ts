import { dayFromParts } from '../../src/basics/calendar.ts';
import type { Day } from '../../src/basics/calendar.ts';

// Everything here is invented: places, vehicles, stock numbers, maker codes, prices.

const day = (year: number, month: number, dayOfMonth: number): Day => dayFromParts(year, month, dayOfMonth)!;

/** The day on which the register was printed. */
export const AS_OF: Day = day(2026, 6, 30);
/** Since that day every removal was written down. */
export const RECORD_START: Day = day(2021, 4, 1);
/** The first vehicles came on that day. */
export const FIRST_INSTALL: Day = day(2017, 1, 16);
/** One station was taken over later; its removals are known from then on. */
export const TAKEN_OVER: Day = day(2022, 9, 1);

/** The truth behind the lives: shape and scale [months] of the Weibull law. */
export const TRUTH = { shape: 2.4, scale: 62 } as const;
/** Share of batteries a month that leave for another reason than failing. */
export const OTHER_REMOVALS_A_MONTH = 0.004;

/** A station: its vehicles' prefix, its share of the fleet, its weather [C] and how long batteries last there. */
export type Site = {
  readonly name: string;
  readonly prefix: string;
  readonly weight: number;
  readonly coldest: number;
  readonly average: number;
  readonly heatedStore: boolean;
  /** The site's lives against the whole service's: 1.08 = 8 % longer. */
  readonly lifeFactor: number;
  /** How often all of a set is renewed when one of it fails. */
  readonly wholeSets: number;
  readonly watchedSince?: Day;
};

/** The nine stations. */
export const SITES: readonly Site[] = [
  {
    name: 'Norrfell Main',
    prefix: 'NM',
    weight: 18,
    coldest: -31,
    average: 2,
    heatedStore: true,
    lifeFactor: 1,
    wholeSets: 0.5,
  },
  {
    name: 'Isvarg Pass',
    prefix: 'IP',
    weight: 14,
    coldest: -38,
    average: -2,
    heatedStore: false,
    lifeFactor: 0.95,
    wholeSets: 0.3,
  },
  {
    name: 'Kaldmoor',
    prefix: 'KM',
    weight: 13,
    coldest: -33,
    average: 1,
    heatedStore: true,
    lifeFactor: 1.04,
    wholeSets: 0.2,
  },
  {
    name: 'Skarnhavn',
    prefix: 'SK',
    weight: 11,
    coldest: -16,
    average: 6,
    heatedStore: true,
    lifeFactor: 0.92,
    wholeSets: 0.2,
  },
  {
    name: 'Brattmyr',
    prefix: 'BM',
    weight: 10,
    coldest: -29,
    average: 3,
    heatedStore: false,
    lifeFactor: 1.02,
    wholeSets: 0.25,
  },
  {
    name: 'Tindvakt',
    prefix: 'TV',
    weight: 9,
    coldest: -40,
    average: -3,
    heatedStore: false,
    lifeFactor: 1,
    wholeSets: 0.1,
  },
  {
    name: 'Fonnlia',
    prefix: 'FL',
    weight: 9,
    coldest: -27,
    average: 3,
    heatedStore: true,
    lifeFactor: 1.08,
    wholeSets: 0.3,
  },
  {
    name: 'Hrimdal',
    prefix: 'HD',
    weight: 8,
    coldest: -42,
    average: -4,
    heatedStore: false,
    lifeFactor: 0.98,
    wholeSets: 0.15,
  },
  {
    name: 'Vintermark',
    prefix: 'VM',
    weight: 8,
    coldest: -24,
    average: 4,
    heatedStore: true,
    lifeFactor: 1.05,
    wholeSets: 0.2,
    watchedSince: TAKEN_OVER,
  },
];

/** A kind of battery: what its label says, what it costs [invented currency] and how its volts run. */
export type BatteryKind = {
  readonly key: string;
  readonly spellings: readonly string[];
  readonly construction: 'AGM' | 'flooded' | 'gel';
  readonly stockNumbers: readonly string[];
  readonly labelAmps: number;
  readonly rating: 'SAE' | 'EN';
  readonly price: number;
  readonly makers: readonly { readonly code: string; readonly weight: number }[];
  readonly lifeFactor: number;
};

/** The kinds of battery in the register. */
export const BATTERY_KINDS = {
  '6T AGM': {
    key: '6T AGM',
    spellings: ['6T AGM', '6T AGM', '6T AGM', '6T AGM', '6T-AGM', '6T (AGM)', 'Battery 12V 6T agm'],
    construction: 'AGM',
    stockNumbers: ['6140-99-000-0123', '6140-99-000-0123', '6140-99-000-0124'],
    labelAmps: 1100,
    rating: 'SAE',
    price: 318,
    makers: [
      { code: '9ZZ98', weight: 70 },
      { code: '9ZZ97', weight: 30 },
    ],
    lifeFactor: 1,
  },
  '6T flooded': {
    key: '6T flooded',
    spellings: ['6T flooded', '6T wet', '6T flooded (vent caps)'],
    construction: 'flooded',
    stockNumbers: ['6140-99-000-0217'],
    labelAmps: 750,
    rating: 'SAE',
    price: 171,
    makers: [
      { code: '9ZZ96', weight: 100 },
      { code: '7ZZ91', weight: 22 },
    ],
    lifeFactor: 0.85,
  },
  '95 Ah flooded': {
    key: '95 Ah flooded',
    spellings: ['95 Ah flooded', '95Ah wet', '12V 95 Ah flooded'],
    construction: 'flooded',
    stockNumbers: ['6140-99-000-0306'],
    labelAmps: 800,
    rating: 'EN',
    price: 96,
    makers: [{ code: '9ZZ96', weight: 1 }],
    lifeFactor: 0.85,
  },
  '95 Ah AGM': {
    key: '95 Ah AGM',
    spellings: ['95 Ah AGM', '95Ah AGM'],
    construction: 'AGM',
    stockNumbers: ['6140-99-000-0305'],
    labelAmps: 850,
    rating: 'EN',
    price: 164,
    makers: [{ code: '9ZZ95', weight: 1 }],
    lifeFactor: 1,
  },
  'Gel 110 Ah': {
    key: 'Gel 110 Ah',
    spellings: ['Gel 110 Ah', '110 Ah GEL'],
    construction: 'gel',
    stockNumbers: ['6140-99-000-0441'],
    labelAmps: 620,
    rating: 'SAE',
    price: 243,
    makers: [{ code: '9ZZ94', weight: 1 }],
    lifeFactor: 1,
  },
} as const satisfies Record<string, BatteryKind>;

/** The name of a kind of battery. */
export type BatteryKindName = keyof typeof BATTERY_KINDS;

/** A kind of vehicle: how many batteries it carries and what its crews accept at least, as a share of the label. */
export type VehicleKind = {
  readonly name: string;
  readonly battery: BatteryKindName;
  readonly places: number;
  readonly weight: number;
  readonly acceptedShare: number;
};

/** The kinds of vehicle; the weight is the number of each in the whole service. */
export const VEHICLE_KINDS: readonly VehicleKind[] = [
  { name: 'Tracked rescue carrier', battery: '6T AGM', places: 4, weight: 40, acceptedShare: 0.85 },
  { name: 'Plough truck', battery: '6T AGM', places: 2, weight: 96, acceptedShare: 0.8 },
  { name: 'Snow blower', battery: '6T AGM', places: 2, weight: 30, acceptedShare: 0.8 },
  { name: 'Recovery tractor', battery: '6T AGM', places: 4, weight: 16, acceptedShare: 0.85 },
  { name: 'Generator trailer', battery: '6T flooded', places: 2, weight: 22, acceptedShare: 0.75 },
  { name: 'Crew van', battery: '95 Ah flooded', places: 1, weight: 22, acceptedShare: 0.7 },
  { name: 'Ambulance', battery: '95 Ah AGM', places: 1, weight: 14, acceptedShare: 0.8 },
  { name: 'Radio relay trailer', battery: 'Gel 110 Ah', places: 2, weight: 6, acceptedShare: 0.7 },
];

/** A lot that was bad from the start: its batteries last a third as long. */
export const BAD_LOT = {
  maker: '9ZZ98',
  year: 2023,
  month: 3,
  lot: '417',
  lifeFactor: 0.33,
  most: 24,
} as const;
/** A vehicle whose charging system ruins its batteries. */
export const BAD_VEHICLE = { site: 'Brattmyr', kind: 'Tracked rescue carrier', lifeFactor: 0.35 } as const;
