/** One battery of the script: what the clerk answers and reads, and what must come of it. */
export type ScriptedBattery = {
  readonly what: string;
  /** Answers to case, posts, heat and, where none of them is yes, alone; y or n each. */
  readonly look: string;
  readonly serial: string;
  /** Volts, hours, temperature, reading, load volts, least; '' keeps what stands there, '-' empties it. */
  readonly read?: readonly string[];
  readonly retest?: 0 | 1 | 2;
  /** First letter of another construction. */
  readonly construction?: string;
  readonly frost?: 'y' | 'n';
  /** Before this battery lies on the bench, the one before it is put on record as charged fully. */
  readonly chargedBefore?: boolean;
  readonly word: string;
  readonly because: string;
  /** The row in sheet Tests: damage, rest volts, reading and retest; null = not counted. */
  readonly row: readonly [
    damage: string,
    volts: number | null,
    reading: number | null,
    retest: number | null,
  ];
  /** The serial on record, where it is not as typed. */
  readonly recordedAs?: string;
};

const FINE = 'nnny';

/** The text of a label's symbol, as a scanner types it with its control characters spelled. */
const SYMBOL = '[)>{RS}06{GS}17V9ZZ98{GS}1PBX6T-100{GS}S0079904{RS}{EOT}';

/** Thirty batteries of one morning, in order. Serials are those of the demonstration inventory; readings are invented. */
export const SCRIPT: readonly ScriptedBattery[] = [
  {
    ...{ what: 'good', look: FINE, serial: '0079751', read: ['12.80', '8', '15', '1100', '', '980'] },
    ...{ word: 'Serviceable', because: 'The reading 1100 A is not under the least accepted, 980 A' },
    row: ['no', 12.8, 1100, null],
  },
  {
    ...{
      what: 'good, just at the least',
      look: FINE,
      serial: 'K75056',
      read: ['12.78', '9', '', '980', '', ''],
    },
    ...{ word: 'Serviceable', because: '980 A is not under the least accepted, 980 A' },
    row: ['no', 12.78, 980, null],
  },
  {
    ...{ what: 'cracked', look: 'ynn', serial: '0079913' },
    ...{ word: 'Condemned', because: 'Damage is noted on it: case' },
    row: ['case', null, null, null],
  },
  {
    ...{ what: 'post melted', look: 'nyn', serial: 'K76481' },
    ...{ word: 'Condemned', because: 'Damage is noted on it: posts' },
    row: ['posts', null, null, null],
  },
  {
    ...{ what: 'cracked and hot', look: 'yny', serial: 'K76472' },
    ...{ word: 'Condemned', because: 'Damage is noted on it: case' },
    row: ['case', null, null, null],
  },
  {
    ...{ what: 'hissing', look: 'nny', serial: '0080078' },
    ...{ word: 'Not judged', because: 'hot, hissing or smells of rotten eggs' },
    row: ['no', null, null, null],
  },
  {
    ...{ what: 'still in its set', look: 'nnnn', serial: '0078824' },
    ...{ word: 'Not judged', because: 'It is not alone' },
    row: ['no', null, null, null],
  },
  {
    ...{ what: 'frozen, by the clerk', look: FINE, serial: '0080005', frost: 'y' },
    ...{ read: ['11.90', '8', '-5', '', '', ''], word: 'Not judged', because: 'It has been in frost' },
    row: ['no', null, null, null],
  },
  {
    ...{ what: 'frozen, by its volts', look: FINE, serial: '0079757', frost: 'n' },
    ...{ read: ['11.90', '8', '-25', '', '', ''], word: 'Not judged', because: 'At -25 C it may be frozen' },
    row: ['no', 11.9, null, null],
  },
  {
    ...{ what: 'hot by its temperature', look: FINE, serial: '0078815' },
    ...{ read: ['12.80', '8', '58', '1000', '', ''], word: 'Not judged', because: 'At 58 C it is hot' },
    row: ['no', 12.8, 1000, null],
  },
  {
    ...{ what: 'on charge', look: FINE, serial: '0076118', read: ['14.30', '8', '15', '700', '', ''] },
    ...{ word: 'Not judged', because: 'on charge, on float or not rested' },
    row: ['no', 14.3, 700, null],
  },
  {
    ...{ what: 'not rested', look: FINE, serial: '0078950', read: ['12.90', '1', '', '700', '', ''] },
    ...{ word: 'Not judged', because: 'It rested 1 h only' },
    row: ['no', null, null, null],
  },
  {
    ...{ what: 'discharged', look: FINE, serial: '0080243', frost: 'n' },
    ...{
      read: ['12.10', '8', '', '600', '', ''],
      word: 'Awaiting charge',
      because: 'too little to judge it',
    },
    row: ['no', 12.1, 600, null],
  },
  {
    ...{ what: 'no reading yet', look: FINE, serial: '0080249', read: ['12.80', '8', '', '', '', ''] },
    ...{ word: 'Not judged', because: 'there is no cranking reading' },
    row: ['no', 12.8, null, null],
  },
  {
    ...{ what: 'fails in the cold', look: FINE, serial: '0080256' },
    ...{ read: ['12.80', '8', '-10', '800', '', ''], word: 'Not judged', because: 'below 0 C' },
    row: ['no', 12.8, 800, null],
  },
  {
    ...{ what: 'failed once', look: FINE, serial: '0080263', read: ['12.80', '8', '15', '800', '', ''] },
    ...{ word: 'Awaiting charge', because: '800 A is under the least accepted, 980 A: failed once' },
    row: ['no', 12.8, 800, null],
  },
  {
    ...{ what: 'retest without a charge on record', look: FINE, serial: '0080263', retest: 1 },
    ...{ read: ['12.80', '8', '', '800', '', ''], word: 'Awaiting charge', because: 'failed once' },
    row: ['no', 12.8, 800, null],
  },
  {
    ...{ what: 'retest after the recorded charge', look: FINE, serial: '0080263', chargedBefore: true },
    ...{ read: ['12.81', '8', '', '790', '', ''], retest: 1 },
    ...{ word: 'Condemned', because: '790 A is under the least accepted, 980 A, again after a full charge' },
    row: ['no', 12.81, 790, 1],
  },
  {
    ...{ what: 'failed once, for two retests', look: FINE, serial: '0080266' },
    ...{ read: ['12.75', '8', '', '700', '', ''], word: 'Awaiting charge', because: 'failed once' },
    row: ['no', 12.75, 700, null],
  },
  {
    ...{ what: 'retest that comes up too little', look: FINE, serial: '0080266', chargedBefore: true },
    ...{ read: ['12.20', '8', '', '700', '', ''], retest: 1, word: 'Awaiting charge' },
    ...{ because: 'even though it was charged after a failing test', row: ['no', 12.2, 700, 1] },
  },
  {
    ...{ what: 'second retest that does not come up', look: FINE, serial: '0080266', chargedBefore: true },
    ...{ read: ['12.20', '8', '', '700', '', ''], retest: 2, word: 'Condemned' },
    ...{ because: 'After a second full charge it rests at 12.20 V', row: ['no', 12.2, 700, 2] },
  },
  {
    ...{ what: 'close to the least', look: FINE, serial: '0080272', read: ['12.80', '8', '', '950', '', ''] },
    ...{ word: 'Awaiting charge', because: '950 A is under the least accepted, 980 A: failed once' },
    row: ['no', 12.8, 950, null],
  },
  {
    ...{ what: 'not in the inventory', look: FINE, serial: 'ZZ-1', read: ['12.80', '8', '', '990', '', ''] },
    ...{ word: 'Serviceable', because: '990 A is not under' },
    row: ['no', 12.8, 990, null],
  },
  {
    ...{ what: 'scanned symbol', look: FINE, serial: SYMBOL, recordedAs: '0079904' },
    ...{ read: ['12.75', '8', '', '1010', '', ''], word: 'Serviceable', because: '1010 A is not under' },
    row: ['no', 12.75, 1010, null],
  },
  {
    ...{ what: 'no temperature, no frost', look: FINE, serial: '0078304', frost: 'n' },
    ...{ read: ['12.80', '8', '-', '1000', '', ''], word: 'Serviceable', because: 'temperature not given' },
    row: ['no', 12.8, 1000, null],
  },
  {
    ...{ what: 'no temperature, frost', look: FINE, serial: 'K76154', frost: 'y' },
    ...{ read: ['12.80', '8', '', '700', '', ''], word: 'Not judged', because: 'It has been in frost' },
    row: ['no', null, null, null],
  },
  {
    ...{ what: 'by its load volts', look: FINE, serial: '0080253' },
    ...{ read: ['12.80', '8', '59 F', '', '9.9', '9.6'], word: 'Serviceable' },
    ...{ because: 'The reading 9.9 V is not under the least accepted, 9.6 V', row: ['no', 12.8, null, null] },
  },
  {
    ...{ what: 'flooded', look: FINE, serial: 'F-74799', read: ['12.63', '8', '15', '600', '', '565'] },
    ...{ word: 'Serviceable', because: '600 A is not under the least accepted, 565 A' },
    row: ['no', 12.63, 600, null],
  },
  {
    ...{ what: 'gel, chosen by hand', look: FINE, serial: 'G-NEW', construction: 'g' },
    ...{ read: ['12.82', '8', '', '620', '', '500'], word: 'Serviceable', because: '620 A is not under' },
    row: ['no', 12.82, 620, null],
  },
  {
    ...{ what: 'flooded, chosen by hand, failed once', look: FINE, serial: 'F-NEW', construction: 'f' },
    ...{ read: ['12,60', '8', '', '400', '', ''], word: 'Awaiting charge', because: 'failed once' },
    row: ['no', 12.6, 400, null],
  },
];
