import type { Examples } from './examples.ts';
import type { Row } from './sheets.ts';
import { day, plain } from './sheets.ts';

const read = (change: Row = {}, number = 1): Row =>
  plain(
    { OCV: 12.78, 'Temp C': 15, 'CCA meas.': 1100, Least: 880, Tested: day('2026-05-04'), ...change },
    number,
  );
const readFleet: readonly Row[] = Array.from({ length: 8 }, (_, index) => read({}, 200 + index));
const one = (change: Row): readonly Row[] => [...readFleet, read(change)];
const stock = (change: Row = {}): Row =>
  read({ Status: 'in store', Installed: null, Vehicle: null, ...change });
const test = (change: Row = {}): Row => ({
  Date: day('2026-05-20'),
  Serial: 'A1001',
  'Rest volts': 12.8,
  Reading: 1100,
  Least: 880,
  ...change,
});

/** Findings about readings, charge and storage. */
export const readingExamples: Examples = {
  'whole 24 V set': { yes: [one({ OCV: 25.4 })], no: [one({ OCV: 12.7 })] },
  'no rest voltage of a battery': {
    yes: [one({ OCV: 17 }), one({ OCV: -12.6 }), one({ OCV: 40 }), one({ OCV: 2.1 })],
    no: [one({})],
  },
  'on charge or not rested': { yes: [one({ OCV: 13.4 })], no: [one({ OCV: 12.95 })] },
  'deeply discharged': { yes: [one({ OCV: 10.9 })], no: [one({ OCV: 11.4 })] },
  'charged and tested the same day': {
    yes: [one({ Charged: day('2026-05-04') })],
    no: [one({ Charged: day('2026-05-03') })],
  },
  'temperature must be Fahrenheit': {
    yes: [readFleet.map((row, index) => ({ ...row, 'Temp C': 50 + 5 * index }))],
    no: [readFleet, readFleet.map((row, index) => ({ ...row, 'Temp C': null, 'Temp F': 50 + 5 * index }))],
  },
  'temperature no battery can have': { yes: [one({ 'Temp C': -55 })], no: [one({ 'Temp C': -35 })] },
  'reading without a least': { yes: [one({ Least: null })], no: [one({ 'CCA meas.': null, Least: null })] },
  'reading and least in different units': {
    yes: [one({ Least: 9.6 })],
    no: [one({ 'CCA meas.': 9.9, Least: 9.6 })],
  },
  'ratings of mixed kinds': {
    yes: [[...readFleet.map((row) => ({ ...row, Rating: '1100 CCA' })), read({ Rating: '850 EN' })]],
    no: [readFleet.map((row) => ({ ...row, Rating: '1100 CCA' }))],
  },
  'test too old to count': {
    yes: [one({ Tested: day('2025-05-04') })],
    no: [one({ Tested: day('2025-07-04') })],
  },
  'retest not understood': { yes: [one({ Retest: 'maybe' })], no: [one({ Retest: 'yes' })] },
  'retest not in the order of dates': {
    yes: [{ rows: readFleet.concat(read()), tests: [test({ Retest: 1 })] }],
    no: [{ rows: readFleet.concat(read()), tests: [test({ Retest: 0 })] }],
  },
  'reading differs from the Tests sheet': {
    yes: [{ rows: one({ Tested: day('2026-06-01'), OCV: 12.5 }), tests: [test()] }],
    no: [{ rows: one({ Tested: day('2026-05-01'), OCV: 12.5 }), tests: [test()] }],
  },
  'charge date differs from the Charges sheet': {
    yes: [
      { rows: one({ Charged: day('2026-06-02') }), charges: [{ Date: day('2026-05-30'), Serial: 'A1001' }] },
    ],
    no: [
      { rows: one({ Charged: day('2026-05-02') }), charges: [{ Date: day('2026-05-30'), Serial: 'A1001' }] },
    ],
  },
  'charge not full': {
    yes: [{ rows: one({}), charges: [{ Date: day('2026-05-30'), Serial: 'A1001', Full: 'no' }] }],
    no: [{ rows: one({}), charges: [{ Date: day('2026-05-30'), Serial: 'A1001', Full: 'yes' }] }],
  },
  'serial not in the inventory': {
    yes: [{ rows: one({}), tests: [test({ Serial: 'Z9' })] }],
    no: [{ rows: one({}), tests: [test()] }],
  },
  'row without serial or date': {
    yes: [{ rows: one({}), tests: [test(), test({ Date: null })] }],
    no: [{ rows: one({}), tests: [test()] }],
  },
  'construction unknown': { yes: [one({ Type: '6T' })], no: [one({ Type: '6T gel' })] },
  'flooded judged as AGM': {
    yes: [
      { rows: one({ Type: '6T flooded' }), settings: { constructions: { '6T flooded': 'AGM' } } },
      one({ Type: '6T flooded', Construction: 'AGM' }),
    ],
    no: [one({ Type: '6T flooded' })],
  },
  'condemned but still in service': {
    yes: [one({ Damage: 'case cracked' })],
    no: [
      one({ Damage: 'none' }),
      one({ Damage: 'case cracked', Removed: day('2026-06-01'), Reason: 'damage' }),
    ],
  },
  'stock due for charge': {
    yes: [[...readFleet, stock({ Charged: day('2025-11-04') })]],
    no: [[...readFleet, stock({ Charged: day('2026-03-04') })]],
  },
  'standing in a vehicle over 30 days': {
    yes: [
      {
        rows: one({ Charged: day('2026-05-01'), Site: 'Fell' }),
        settings: { sites: { Fell: { parked: true } } },
      },
      one({ Charged: day('2026-05-01'), Status: 'parked' }),
    ],
    no: [one({ Charged: day('2026-06-20'), Status: 'parked' }), one({ Charged: day('2026-05-01') })],
  },
  'may freeze here': {
    yes: [{ rows: one({ OCV: 12.1, Site: 'Fell' }), settings: { sites: { Fell: { coldest: -30 } } } }],
    no: [
      { rows: one({ OCV: 12.8, Site: 'Fell' }), settings: { sites: { Fell: { coldest: -30 } } } },
      one({ OCV: 12.1 }),
    ],
  },
};
