import type { Examples } from './examples.ts';
import type { Row } from './sheets.ts';
import { day, fleet, plain } from './sheets.ts';

const removed = (change: Row = {}, number = 50): Row =>
  plain({ Removed: day('2025-03-01'), Reason: 'failed', ...change }, number);
const removedFleet: readonly Row[] = [removed({}, 60), removed({ Removed: day('2025-09-01') }, 61)];

/** Findings about dates, ages and records. */
export const dateExamples: Examples = {
  'text date': {
    yes: [[...fleet(), plain({ Installed: '10 Feb 2024' })]],
    no: [[...fleet(), plain({ Installed: '2024-02-10' })]],
  },
  'date written as a number': {
    yes: [[...fleet(), plain({ Installed: 20240210 })]],
    no: [[...fleet(), plain({ Installed: day('2024-02-10') })]],
  },
  'text date that reads two ways': {
    yes: [
      [...fleet(), plain({ Installed: '03/04/2024' })],
      [...fleet(), plain({ Installed: '03/04/2024' }), plain({ Installed: '13/04/2024' }, 2)],
    ],
    no: [
      [
        ...fleet(),
        plain({ Installed: '03/04/2024' }),
        ...fleet(10).map((row) => ({ ...row, Installed: '13/04/2024' })),
      ],
      { rows: [...fleet(), plain({ Installed: '03/04/2024' })], settings: { dateOrder: 'dayFirst' } },
      [...fleet(), plain({ Installed: '04/04/2024' })],
    ],
  },
  'unreadable date': {
    yes: [[...fleet(), plain({ Installed: 'spring' })]],
    no: [[...fleet(), plain({ Installed: null })]],
  },
  'year only': {
    yes: [
      [...fleet(), plain({ Installed: 2024 })],
      [...fleet(), plain({ Installed: '2024' })],
    ],
    no: [[...fleet(), plain({ Installed: '2024-02' })]],
  },
  'date later than as-of': {
    yes: [[...fleet(), plain({ Installed: day('2026-07-09') })]],
    no: [[...fleet(), plain({ Installed: day('2026-06-30') })]],
  },
  'as-of older than the sheet': {
    yes: [
      fleet().map((row, index) => ({ ...row, Removed: index < 3 ? day('2027-01-05') : null, Reason: null })),
    ],
    no: [
      fleet().map((row, index) => ({ ...row, Removed: index < 1 ? day('2027-01-05') : null, Reason: null })),
    ],
  },
  'installed before made': {
    yes: [[...fleet(), plain({ Installed: day('2023-09-30') })]],
    no: [[...fleet(), plain({ Installed: day('2023-10-01') })]],
  },
  'removed before installed': {
    yes: [[...fleet(), removed({ Removed: day('2024-02-09') })]],
    no: [[...fleet(), removed()]],
  },
  'removed on the day installed': {
    yes: [[...fleet(), removed({ Removed: day('2024-02-10') })]],
    no: [[...fleet(), removed({ Removed: day('2024-02-11') })]],
  },
  'removed, date missing': {
    yes: [
      [...fleet(), ...removedFleet, plain({ Status: 'scrapped' })],
      [...fleet(), ...removedFleet, removed({ Removed: 'last winter' })],
    ],
    no: [
      [...fleet(), ...removedFleet, plain({ Status: 'in service' })],
      [...fleet(), ...removedFleet, removed({ Removed: 'no' })],
    ],
  },
  'removed, age unknown': {
    yes: [[...fleet(), removed({ Installed: null, 'Date code': null })]],
    no: [[...fleet(), removed({ Installed: null })]],
  },
  'removed before records begin': {
    yes: [{ rows: [...fleet(), ...removedFleet], settings: { recordsSince: '2025-06-01' } }],
    no: [{ rows: [...fleet(), ...removedFleet], settings: { recordsSince: '2024-06-01' } }],
  },
  'watched since after removal': {
    yes: [[...fleet(), removed({ 'First seen': day('2025-03-02') })]],
    no: [[...fleet(), removed({ 'First seen': day('2025-03-01') })]],
  },
  'watched since missing': {
    // One row of many lacks its date; where most lack it, the column answers for its own rows only.
    yes: [
      [
        ...[...fleet(), ...fleet(), ...fleet()].map((row, index) => ({
          ...row,
          Serial: `W${index}`,
          'First seen': day('2024-05-01'),
        })),
        removedFleet[0]!,
      ],
    ],
    no: [
      [...fleet(), ...removedFleet],
      [...fleet().slice(1), { ...fleet()[0]!, 'First seen': day('2024-05-01') }, ...removedFleet],
    ],
  },
  'record start assumed': {
    yes: [
      [...fleet(), ...removedFleet],
      { rows: [...fleet(), ...removedFleet], settings: { recordsSince: 'unknown' } },
    ],
    no: [{ rows: [...fleet(), ...removedFleet], settings: { recordsSince: 'never' } }, fleet()],
  },
  'made date used for installed': {
    yes: [
      [...fleet(), plain({ Installed: null })],
      [...fleet(), removed({ Installed: null })],
    ],
    no: [[...fleet(), plain({ Installed: null, Status: 'in stock' })], fleet()],
  },
  'later installation unknown': {
    yes: [[...fleet(), removed({}, 7), plain({ Installed: 'TBD', Vehicle: 'NF-70' }, 7)]],
    no: [[...fleet(), removed({}, 7), plain({ Installed: 'TBD' }, 8)]],
  },
  'age unknown': {
    yes: [[...fleet(), plain({ Installed: null, 'Date code': null })]],
    no: [
      [...fleet(), plain({ Installed: null })],
      [...fleet(), plain({ Installed: null, 'Date code': null, Status: 'shelf' })],
    ],
  },
  'in service over 12 years': {
    yes: [[...fleet(), plain({ 'Date code': null, Installed: day('2014-05-10') })]],
    no: [[...fleet(), plain({ 'Date code': null, Installed: day('2014-07-10') })]],
  },
  'old before it was fitted': {
    yes: [[...fleet(), plain({ Installed: day('2024-12-10') })]],
    no: [[...fleet(), plain({ Installed: day('2024-09-20') })]],
  },
  'long on the shelf or moved': {
    yes: [[...fleet(), plain({ Installed: day('2025-12-10') })]],
    no: [[...fleet(), plain({ Installed: day('2025-09-10') })]],
  },
  'removal cause not understood': {
    yes: [[...fleet(), removed({ Reason: 'zebra' })]],
    no: [
      [...fleet(), removed({ Reason: 'vehicle sold' })],
      { rows: [...fleet(), removed({ Reason: 'zebra' })], settings: { causes: { zebra: 'failed' } } },
    ],
  },
  'removal cause not said': {
    yes: [
      [...fleet(), removed({ Reason: null }), removed({}, 51)],
      [...fleet(), removed({ Reason: 'unknown' })],
    ],
    no: [[...fleet(), removed()]],
  },
};
