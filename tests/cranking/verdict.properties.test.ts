import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BatteryTest } from '../../src/cranking/batteryTest.ts';
import { judge, verdict } from '../../src/cranking/verdict.ts';
import { verdictReason } from '../../src/cranking/verdictReason.ts';
import { freezingPoint } from '../../src/electrochemistry/freezingPoint.ts';
import type { Construction } from '../../src/service/battery.ts';
import { SEED, valueOf } from '../electrochemistry/outcomes.ts';

const maybe = <T>(known: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(known, { nil: undefined });

const tests: fc.Arbitrary<BatteryTest> = fc.record({
  reading: fc.double({ min: 16, max: 1_500, noNaN: true }),
  least: fc.double({ min: 16, max: 1_500, noNaN: true }),
  volts: maybe(fc.double({ min: 10.5, max: 13.5, noNaN: true })),
  celsius: maybe(fc.double({ min: -40, max: 70, noNaN: true })),
  retest: fc.constantFrom(0, 1, 2),
  construction: fc.constantFrom<Construction>('AGM', 'flooded', 'gel', 12.7, 13.1),
});

const MANY = { seed: SEED, numRuns: 2_000 };

describe('verdict, properties', () => {
  it('condemns what is damaged', () => {
    fc.assert(
      fc.property(tests, (test) => valueOf(verdict({ ...test, damage: true })) === 'Condemned'),
      MANY,
    );
  });

  it('condemns nothing undamaged at its first test', () => {
    fc.assert(
      fc.property(tests, (test) => valueOf(verdict({ ...test, retest: 0 })) !== 'Condemned'),
      MANY,
    );
  });

  it('condemns nothing whose rest voltage is not known', () => {
    fc.assert(
      fc.property(tests, (test) => valueOf(verdict({ ...test, volts: undefined })) !== 'Condemned'),
      MANY,
    );
  });

  it('neither passes nor condemns nor charges what may be frozen by its own voltage', () => {
    const cold = fc.tuple(tests, fc.double({ min: -40, max: 0, noNaN: true }));
    let seen = 0;
    fc.assert(
      fc.property(cold, ([given, celsius]) => {
        const test = { ...given, celsius };
        const point = test.volts === undefined ? undefined : freezingPoint(test.volts, celsius);
        const frozen = point !== undefined && (point.ok ? celsius < point.value + 5 : test.volts! < 11.3);
        if (!frozen) return true;
        seen += 1;
        return valueOf(verdict(test)) === 'Not judged';
      }),
      MANY,
    );
    expect(seen).toBeGreaterThan(500);
  });

  it('judges no hot battery', () => {
    const hot = fc.tuple(tests, fc.double({ min: 50.001, max: 100, noNaN: true }));
    fc.assert(
      fc.property(hot, ([test, celsius]) => valueOf(verdict({ ...test, celsius })) === 'Not judged'),
      MANY,
    );
  });

  it('never takes Serviceable away for a higher reading', () => {
    const higher = fc.tuple(tests, fc.double({ min: 0, max: 2_000, noNaN: true }));
    fc.assert(
      fc.property(higher, ([test, more]) => {
        if (valueOf(verdict(test)) !== 'Serviceable') return true;
        return valueOf(verdict({ ...test, reading: test.reading! + more })) === 'Serviceable';
      }),
      MANY,
    );
  });

  it('never passes a reading under the least', () => {
    fc.assert(
      fc.property(
        tests,
        (test) => valueOf(verdict(test)) !== 'Serviceable' || test.reading! >= test.least! * (1 - 1e-9),
      ),
      MANY,
    );
  });

  it('does not know cold or warm without a temperature', () => {
    fc.assert(
      fc.property(tests, (test) => ![2, 3, 9].includes(valueOf(judge({ ...test, celsius: undefined })).line)),
      MANY,
    );
  });

  it('reaches every line in these draws, and verdict, judgement and reason agree', () => {
    const lines = new Set<number>();
    const draws = fc.tuple(tests, fc.boolean(), fc.boolean());
    fc.assert(
      fc.property(draws, ([given, damage, read]) => {
        const test = {
          ...given,
          damage,
          ...(read || given.volts === undefined ? {} : { reading: undefined }),
        };
        const judgement = valueOf(judge(test));
        lines.add(judgement.line);
        expect(valueOf(verdict(test))).toBe(judgement.word);
        expect(valueOf(verdictReason(test))).toMatch(FIRST_WORDS[judgement.line]!);
      }),
      { seed: SEED, numRuns: 5_000 },
    );
    expect([...lines].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
  });
});

/** What only the reason of that line says. */
const FIRST_WORDS: Record<number, RegExp> = {
  1: /^Damage is noted/,
  2: /^At .* it may be frozen/,
  3: /^At .* it is hot/,
  4: /^.* above its full rest voltage/,
  5: /(its rest voltage was not given\. Fit for use|Measure the rest voltage first)/,
  6: /(too little to judge it by a test|it does not come up)\. /,
  7: /Take a cranking reading/,
  8: /^The reading .* is not under the least accepted, [\d.]+ A\. Fit for use/,
  9: /Warm it to 10 C or more and read again/,
  10: /: failed once\. /,
  11: /again after a full charge and rest\. /,
};
