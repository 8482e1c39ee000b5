import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BenchEntry, YesNo } from '../../src/cranking/benchEntry.ts';
import { asksAboutFrost } from '../../src/cranking/benchEntry.ts';
import type { BenchTest } from '../../src/cranking/benchTest.ts';
import { benchTest } from '../../src/cranking/benchTest.ts';
import { CAUTIONS, cautionTexts } from '../../src/cranking/cautions.ts';
import type { Construction } from '../../src/service/battery.ts';
import { refusal, SEED, valueOf } from '../electrochemistry/outcomes.ts';

const WHOLE = { case: 'no', posts: 'no', heat: 'no' } as const;
const good: BenchEntry = {
  ...{ look: WHOLE, alone: 'yes', restVolts: 12.8, hoursAtRest: 9, celsius: 15 },
  ...{ reading: 1050, least: 880, construction: 'AGM' },
};
const at = (change: Partial<BenchEntry> = {}): BenchTest => valueOf(benchTest({ ...good, ...change }));
const failedTwice = { reading: 600, retest: 1, testedOn: 46_170, chargedOn: 46_172 } as const;

describe('the order of the bench', () => {
  it('looks first', () => {
    const step = valueOf(benchTest({ look: { case: 'no' }, restVolts: 12.8 }));
    expect(step).toMatchObject({ stage: 'look', asks: ['posts', 'heat'], cautions: ['acid'] });
    expect(step.answer).toBeUndefined();
  });

  it('then asks whether it is alone, with the cautions about cables and weight', () => {
    const step = at({ alone: undefined });
    expect(step).toMatchObject({ stage: 'alone', asks: ['alone'] });
    expect(step.cautions).toEqual(['groundCable', 'shortCircuit', 'lifting']);
  });

  it('then waits for readings', () => {
    expect(at({ restVolts: undefined, reading: undefined }).stage).toBe('readings');
  });

  it.each([
    ['under 12.2 V', { restVolts: 12.19 }],
    ['without a temperature', { celsius: undefined }],
    ['at 0 C without a rest voltage', { restVolts: undefined, celsius: 0 }],
  ])('asks about frost %s', (_, change) => {
    expect(at(change)).toMatchObject({ stage: 'frost', asks: ['frost'], cautions: ['frozen'] });
    expect(at({ ...change, frost: 'no' }).stage).toBe('answer');
  });

  it.each([
    ['at 12.2 V', { restVolts: 12.2 }],
    ['of a hot one', { celsius: 51, restVolts: 12 }],
  ])('does not ask about frost %s', (_, change) => {
    expect(at(change).stage).toBe('answer');
  });
});

describe('the answer of the bench', () => {
  it.each([-1, -0.01, 87_601, Number.NaN])('refuses %d hours at rest', (hoursAtRest) => {
    expect(refusal(benchTest({ ...good, hoursAtRest }))).toEqual([
      'outOfRange',
      `hours at rest is ${hoursAtRest}; allowed is 0 to 87600`,
    ]);
    expect(at({ hoursAtRest: 0 }).answer!.word).toBe('Not judged');
  });

  it('says which is judged where both amperes and load-test volts were read', () => {
    expect(at({ loadVolts: 9.2 }).answer!.notes).toEqual([
      'Judged by the reading in amperes; the load-test volts, 9.2 V, go on record and are not judged',
    ]);
    expect(at({ loadVolts: 9.7, reading: undefined, least: 9.6 }).answer!.notes).toEqual([]);
  });

  it('says what is not known where a cold one has no rest voltage, and judges it by its reading', () => {
    const { answer } = at({ restVolts: undefined, celsius: -25, frost: 'no' });
    expect(answer!.word).toBe('Serviceable');
    expect(answer!.reason).toMatch(/though its rest voltage was not given$/);
    expect(answer!.notes[0]).toMatch(/^Without a rest voltage its charge and where its acid freezes are not/);
    expect(at({ restVolts: undefined, celsius: 15 }).answer!.notes).toEqual([]);
  });

  it('is Serviceable with charge, band, freezing point and what its place means', () => {
    const { answer } = at({ coldestOfPlace: -31 });
    expect(answer).toMatchObject({ word: 'Serviceable', nextStep: 'Fit for use', mayBeCharged: true });
    expect(answer!.reason).toBe('The reading 1050 A is not under the least accepted, 880 A');
    expect(answer!.charge!.low).toBeCloseTo(0.846, 2);
    expect(answer!.freezesAt).toBeLessThan(-50);
    expect(answer!.frostAtPlace).toMatch(/coldest at its place -31 C: safe from frost there$/);
    expect(answer!.notes).toEqual([]);
  });

  it('warns where the place is too cold for its acid', () => {
    const { answer } = at({ restVolts: 12.1, frost: 'no', coldestOfPlace: -31 });
    expect(answer!.frostAtPlace).toMatch(/may freeze there: charge it or keep it warm$/);
    expect(answer!.word).toBe('Awaiting charge');
    expect(answer!.cautions).toContain('chargingAir');
  });

  it('condemns by the look, and names what was seen', () => {
    const { answer } = at({ look: { case: 'yes' }, alone: undefined });
    expect(answer).toMatchObject({ word: 'Condemned', mayBeCharged: false, readingsCount: false });
    expect(answer!.reason).toBe('Damage is noted on it: case');
    expect(answer!.cautions).toEqual(['acid', 'shipping', 'lifting', 'turnIn', 'localRules']);
  });

  it('judges no hot battery, and condemns a hot one only for its damage', () => {
    expect(at({ look: { heat: 'yes' } }).answer).toMatchObject({ word: 'Not judged', mayBeCharged: false });
    const both = at({ look: { posts: 'yes', heat: 'yes' } }).answer!;
    expect(both.word).toBe('Condemned');
    expect(both.cautions[0]).toBe('hot');
  });

  it('condemns after a full charge on record, and only then', () => {
    expect(at(failedTwice).answer!.word).toBe('Condemned');
    const early = at({ ...failedTwice, chargedOn: 46_170 }).answer!;
    expect(early.word).toBe('Awaiting charge');
    expect(early.notes[0]).toMatch(/^Counted as a first test/);
    expect(at({ ...failedTwice, chargedOn: undefined }).answer!.word).toBe('Awaiting charge');
  });

  it.each([
    ['in its set', { alone: 'no' }],
    ['frozen', { frost: 'yes' }],
    ['rested for an hour', { hoursAtRest: 1 }],
    ['on charge', { restVolts: 13.4 }],
  ] as const)('is Not judged for one %s, whatever was read', (_, change) => {
    const { answer } = at({ ...failedTwice, ...change });
    expect(answer).toMatchObject({ word: 'Not judged', mayBeCharged: false });
  });

  it('judges load-test volts against the published floor', () => {
    const loaded = { reading: undefined, least: 880, celsius: 21.2 } as const;
    expect(at({ ...loaded, loadVolts: 9.9 }).answer!.word).toBe('Serviceable');
    expect(at({ ...loaded, loadVolts: 9.1 }).answer!.word).toBe('Awaiting charge');
  });

  it('says that hours at rest were not given', () => {
    expect(at({ hoursAtRest: undefined }).answer!.notes).toHaveLength(1);
  });

  it('ends every set of cautions with who decides', () => {
    for (const change of [{}, failedTwice, { alone: 'no' }, { frost: 'yes' }] as const)
      expect(at(change).cautions.at(-1)).toBe('localRules');
    expect(cautionTexts(['lifting'])[0]).toBe(CAUTIONS.lifting);
  });
});

describe('the bench refuses', () => {
  it('the volts of a whole set', () => {
    expect(refusal(benchTest({ ...good, restVolts: 25.2 }))[0]).toBe('badInput');
  });

  it('a reading and a least in different units', () => {
    expect(refusal(benchTest({ ...good, least: 9.6 }))).toEqual([
      'badInput',
      expect.stringContaining('reading'),
    ]);
  });

  it('a reading without a least', () => {
    expect(refusal(benchTest({ ...good, least: undefined }))[0]).toBe('missing');
  });
});

const maybe = <T>(known: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(known, { nil: undefined });
// Mostly "no", so that many entries come through to the readings.
const yesNo: fc.Arbitrary<YesNo | undefined> = fc.oneof(
  { weight: 8, arbitrary: fc.constant('no' as const) },
  { weight: 1, arbitrary: fc.constantFrom('yes', undefined) },
);
const number = (min: number, max: number) => maybe(fc.double({ min, max, noNaN: true }));
const entries: fc.Arbitrary<BenchEntry> = fc.record({
  look: fc.record({ case: yesNo, posts: yesNo, heat: yesNo }),
  alone: fc.constantFrom<YesNo | undefined>('yes', 'yes', 'yes', 'no', undefined),
  frost: yesNo,
  restVolts: number(10.5, 14),
  hoursAtRest: number(0, 24),
  celsius: number(-40, 70),
  reading: number(16, 1500),
  loadVolts: number(7, 12),
  least: number(16, 1500),
  retest: fc.constantFrom(0, 1, 2),
  chargedOn: maybe(fc.integer({ min: 46_168, max: 46_172 })),
  testedOn: maybe(fc.integer({ min: 46_168, max: 46_172 })),
  construction: fc.constantFrom<Construction[]>('AGM', 'flooded', 'gel', 12.7),
  coldestOfPlace: number(-45, 10),
});

describe('the bench, over all answers', () => {
  const MANY = { seed: SEED, numRuns: 20_000 };
  const judged = (entry: BenchEntry) => {
    const step = benchTest(entry);
    return step.ok ? step.value.answer : undefined;
  };

  it('a damaged, hot, in-set, frozen or unrested battery is never talked into anything else', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(entries, (entry) => {
        const found = judged(entry);
        if (found === undefined) return true;
        const { look, alone, frost, hoursAtRest = 9 } = entry;
        const isDamaged = look.case === 'yes' || look.posts === 'yes';
        const isKept = look.heat === 'yes' || alone === 'no' || frost === 'yes' || hoursAtRest < 3;
        seen.set(`${isDamaged} ${isKept} ${found.word}`, 1);
        if (isDamaged) return found.word === 'Condemned' && !found.mayBeCharged;
        return !isKept || (found.word === 'Not judged' && !found.mayBeCharged && !found.readingsCount);
      }),
      MANY,
    );
    // All four words are reached by those that are none of these.
    for (const word of ['Serviceable', 'Awaiting charge', 'Condemned', 'Not judged'])
      expect([...seen.keys()]).toContain(`false false ${word}`);
  });

  it('condemns an undamaged one only alone, at rest, as a retest after a charge on record', () => {
    let condemned = 0;
    fc.assert(
      fc.property(entries, (entry) => {
        const found = judged(entry);
        if (found?.word !== 'Condemned' || found.reason.startsWith('Damage')) return true;
        condemned += 1;
        const { alone, retest, chargedOn, testedOn = 0, restVolts, celsius } = entry;
        const isOrdered = chargedOn !== undefined && chargedOn > testedOn;
        return (
          alone === 'yes' && retest !== 0 && isOrdered && restVolts !== undefined && (celsius ?? 20) <= 50
        );
      }),
      MANY,
    );
    expect(condemned).toBeGreaterThan(50);
  });

  it('gives no verdict before the look, alone and, where it has to be asked, frost are answered', () => {
    fc.assert(
      fc.property(entries, (entry) => {
        const { look, alone, frost } = entry;
        const isEnded = [look.case, look.posts, look.heat].includes('yes');
        const isOpen =
          [look.case, look.posts, look.heat, alone].includes(undefined) ||
          (alone === 'yes' && frost === undefined && asksAboutFrost(entry));
        return isEnded || !isOpen || judged(entry) === undefined;
      }),
      MANY,
    );
  });
});
