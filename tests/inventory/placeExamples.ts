import type { Examples } from './examples.ts';
import type { Row } from './sheets.ts';
import { day, fleet, plain } from './sheets.ts';

const pairs = (change: (index: number) => Row, count = 6): Row[] =>
  Array.from({ length: count }, (_, index) =>
    plain({ Vehicle: `NF-${Math.floor(index / 2)}`, Position: (index % 2) + 1, ...change(index) }, index),
  );
const same = (): Row => ({});
const out = { Removed: day('2025-03-01'), Reason: 'failed' };

/** Findings about cells, about one battery in one place, and about sets. */
export const placeExamples: Examples = {
  'number with its unit': {
    yes: [[...fleet().map((row) => ({ ...row, OCV: 12.7 })), plain({ OCV: '12.6V' })]],
    no: [[...fleet().map((row) => ({ ...row, OCV: 12.7 })), plain({ OCV: 12.6 })]],
  },
  'decimal comma': {
    yes: [[...fleet().map((row) => ({ ...row, OCV: 12.7 })), plain({ OCV: '12,6' })]],
    no: [
      [
        ...fleet().map((row) => ({ ...row, 'CCA meas.': 990, Least: 900 })),
        plain({ 'CCA meas.': '1,100', Least: 900 }),
      ],
    ],
  },
  'number stored as text': {
    yes: [[...fleet().map((row) => ({ ...row, OCV: 12.7 })), plain({ OCV: '12.60' })]],
    no: [
      { rows: [...fleet().map((row) => ({ ...row, OCV: 12.7 })), plain({ OCV: '12.60' })], fromText: true },
    ],
  },
  'unreadable number': {
    yes: [[...fleet().map((row) => ({ ...row, OCV: 12.7 })), plain({ OCV: 'ok' })]],
    no: [[...fleet().map((row) => ({ ...row, OCV: 12.7 })), plain({ OCV: '' })]],
  },
  placeholder: {
    yes: [
      [...fleet(), plain({ Installed: 'TBD' })],
      [...fleet(), plain({ Installed: 1 })],
      [...fleet(), plain({ Serial: 'N/A' })],
      [...fleet(), plain({ 'Date code': 9999 })],
    ],
    no: [
      [...fleet(), plain({ Installed: null })],
      [...fleet(), plain({ Damage: 'none' })],
    ],
  },
  'error in the cell': {
    yes: [
      [...fleet(), plain({ Installed: { error: '#N/A' } })],
      [...fleet(), plain({ 'Date code': { error: '#REF!' } })],
    ],
    no: [[...fleet(), plain({ Remarks: { error: '#N/A' } })]],
  },
  'in two places at once': {
    yes: [[...fleet(), plain({}), plain({ Vehicle: 'NF-99', Installed: day('2024-06-01') })]],
    no: [[...fleet(), plain(out), plain({ Vehicle: 'NF-99', Installed: day('2025-03-01') })]],
  },
  'one battery in several rows': {
    yes: [[...fleet(), plain(out), plain({ Vehicle: 'NF-99', Installed: day('2025-04-01') })]],
    no: [[...fleet(), plain(out), plain({ Installed: day('2025-04-01') }, 2)]],
  },
  'two batteries in one place': {
    yes: [pairs(() => ({ Position: 1 }))],
    no: [pairs(same)],
  },
  'status and removal date disagree': {
    yes: [[...fleet(), plain({ ...out, Status: 'in service' })]],
    no: [[...fleet(), plain({ ...out, Status: 'removed' })]],
  },
  'status not understood': {
    yes: [[...fleet(), plain({ Status: 'qwerty' })]],
    no: [[...fleet(), plain({ Status: 'active' })]],
  },
  'neither vehicle nor installed': {
    yes: [[...fleet(), plain({ Vehicle: null, Installed: null })]],
    no: [
      [...fleet(), plain({ Installed: null })],
      [...fleet(), plain({ Vehicle: null, Installed: null, Shelf: 'B3' })],
    ],
  },
  'in stock with an installed date': {
    yes: [[...fleet(), plain({ Status: 'in store' })]],
    no: [[...fleet(), plain({ Status: 'in store', Installed: null })]],
  },
  'site written otherwise': {
    yes: [[...fleet(), plain({ Site: 'NORTH ' }), plain({ Site: 'North.' }, 2)]],
    no: [[...fleet(), plain({ Site: 'South' })]],
  },
  'site perhaps misspelt': {
    yes: [[...fleet(12).map((row) => ({ ...row, Site: 'Isvarg Pass' })), plain({ Site: 'Isvrag Pass' })]],
    no: [[...fleet(12).map((row) => ({ ...row, Site: 'Depot 11' })), plain({ Site: 'Depot 12' })]],
  },
  'set with mixed construction': {
    yes: [pairs((index) => ({ Type: index === 1 ? '6T flooded' : '6T AGM' }))],
    no: [pairs(same)],
  },
  'set over 12 months apart': {
    yes: [pairs((index) => (index === 1 ? { Installed: day('2025-06-10'), 'Date code': '0125-1' } : {}))],
    no: [pairs((index) => (index === 1 ? { Installed: day('2024-06-10') } : {}))],
  },
  'odd number in a set': {
    yes: [pairs(same, 7)],
    no: [pairs(same), fleet()],
  },
};
