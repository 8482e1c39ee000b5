import type { DemoCell } from './columns.ts';
import type { Planted } from './dirtyRow.ts';
import { registerOnly } from './dirtOfReadings.ts';
import type { DemoCharge, DemoTest, Stories } from './stories.ts';
import { AS_OF, BATTERY_KINDS } from './service.ts';

/** A sheet of plain lines under one header row. */
export type SideSheet = {
  readonly name: string;
  readonly head: readonly string[];
  readonly widths: readonly number[];
  readonly lines: readonly (readonly (DemoCell | undefined)[])[];
};

const FORMAT = 'yyyy-mm-dd';

/** Sheets Tests and Charges, less what a crew wrote in the register only, with a few stray lines. */
export function sideSheets({ tests, charges }: Stories, planted: readonly Planted[]): readonly SideSheet[] {
  const silent = new Set(
    planted
      .filter(({ kind }) => registerOnly.has(kind))
      .flatMap(({ rows }) => rows.map(({ battery }) => battery)),
  );
  const written = tests.filter(({ battery }) => !silent.has(battery));
  const charged = charges.filter(({ battery }) => !silent.has(battery));
  return [
    { ...TESTS, lines: [...written.map(testLine), ...STRAY_TESTS] },
    { ...CHARGES, lines: [...charged.map(chargeLine), ...STRAY_CHARGES] },
  ];
}

const TESTS = {
  name: 'Tests',
  head: [
    'Date',
    'Serial',
    'Vehicle',
    'Place in the set',
    'Damage',
    'Rest volts',
    'Hours at rest',
    'Temperature',
    'Reading',
    'Load volts',
    'Least',
    'Retest',
    'Verdict',
    'Reason',
    'Tester used',
    'Initials',
  ],
  widths: [12, 11, 9, 10, 10, 10, 10, 12, 9, 10, 8, 8, 16, 36, 12, 8],
};

const CHARGES = {
  name: 'Charges',
  head: [
    'Date',
    'Serial',
    'Charger set to',
    'Hours',
    'Amps at the end',
    'Volts after rest',
    'Full',
    'Initials',
  ],
  widths: [12, 11, 14, 8, 14, 14, 8, 8],
};

function testLine(test: DemoTest): readonly (DemoCell | undefined)[] {
  const { battery, stint } = test;
  return [
    { day: test.day, format: FORMAT },
    battery.serial,
    stint?.vehicle.name,
    stint !== undefined && stint.vehicle.kind.places > 1 ? stint.place : undefined,
    test.damage,
    test.volts,
    test.hoursAtRest,
    test.celsius,
    test.amps,
    test.loadVolts,
    test.least,
    test.retest,
    test.verdict,
    wordsOf(test),
    test.tester,
    test.initials,
  ];
}

// What a crew writes down in its own few words.
function wordsOf({ verdict, amps, loadVolts, least, retest }: DemoTest): string {
  const enough = (amps ?? loadVolts!) >= least;
  if (verdict === 'Serviceable') return 'reading not under the least';
  if (verdict === 'Condemned') return 'under the least again after a full charge';
  if (verdict === 'Not judged') return 'too cold to judge, bring it in';
  return enough || retest > 0 ? 'low, charge first' : 'low or under the least, charge and test again';
}

function chargeLine(charge: DemoCharge): readonly (DemoCell | undefined)[] {
  const { battery, day, hours, ampsAtEnd, voltsAfter, full, initials } = charge;
  const setting = BATTERY_KINDS[battery.kind].construction;
  return [
    { day, format: FORMAT },
    battery.serial,
    setting,
    hours,
    ampsAtEnd,
    voltsAfter,
    full ? 'yes' : 'no',
    initials,
  ];
}

/** Stray lines: two serials that no register row has, one line without a serial, one without a date. */
const STRAY_TESTS: readonly (readonly (DemoCell | undefined)[])[] = [
  stray(9, '0099991', 12.71, 1040),
  stray(8, 'K99992', 12.55, 990),
  stray(6, undefined, 12.62, 1015),
  stray(undefined, '0099993', 12.66, 1001),
];
/** One stray charge of a serial that no register row has. */
const STRAY_CHARGES: readonly (readonly (DemoCell | undefined)[])[] = [
  [{ day: AS_OF - 7, format: FORMAT }, '0099991', 'AGM', 12, 0.7, 12.84, 'yes', 'EL'],
];

function stray(daysAgo: number | undefined, serial: string | undefined, volts: number, amps: number) {
  const date = daysAgo === undefined ? undefined : { day: AS_OF - daysAgo, format: FORMAT };
  return [
    date,
    serial,
    undefined,
    undefined,
    undefined,
    volts,
    8,
    14,
    amps,
    undefined,
    935,
    0,
    'Serviceable',
  ];
}
