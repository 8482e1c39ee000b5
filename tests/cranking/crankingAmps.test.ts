import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crankingAmps } from '../../src/cranking/crankingAmps.ts';
import { refusal, SEED, valueOf } from '../electrochemistry/outcomes.ts';

const rating = fc.double({ min: 50, max: 5_000, noNaN: true });
const celsius = fc.double({ min: -29, max: 27, noNaN: true });

describe('crankingAmps, by hand', () => {
  it('stands on its four points', () => {
    expect(valueOf(crankingAmps(1_000, -29))).toBe(625);
    expect(valueOf(crankingAmps(1_000, -18))).toBe(1_000);
    expect(valueOf(crankingAmps(1_000, 0))).toBe(1_200);
    expect(valueOf(crankingAmps(1_000, 27))).toBe(1_400);
  });

  it('goes straight between them', () => {
    // Half way from -18 to 0 C: 1.1; a third of the way from 0 to 27 C: 1.2 + 0.2 / 3; -23.5 C: (0.625 + 1) / 2.
    expect(valueOf(crankingAmps(1_000, -9))).toBeCloseTo(1_100, 9);
    expect(valueOf(crankingAmps(1_000, 9))).toBeCloseTo(1_266.667, 3);
    expect(valueOf(crankingAmps(1_000, -23.5))).toBeCloseTo(812.5, 9);
  });
});

describe('crankingAmps, the trap of the 40 %', () => {
  it('leaves the rating as it is at the temperature where it was taken', () => {
    expect(valueOf(crankingAmps(1_100, -18))).toBe(1_100);
    const atZeroFahrenheit = valueOf(crankingAmps(1_100, -160 / 9));
    expect(atZeroFahrenheit).toBeGreaterThanOrEqual(1_100);
    expect(atZeroFahrenheit).toBeLessThan(1_100 * 1.003);
  });
});

describe('crankingAmps, properties', () => {
  it('rises with temperature and is in proportion to the rating', () => {
    fc.assert(
      fc.property(rating, celsius, celsius, (amps, one, other) => {
        const [cold, warm] = [Math.min(one, other), Math.max(one, other)];
        expect(valueOf(crankingAmps(amps, warm))).toBeGreaterThanOrEqual(valueOf(crankingAmps(amps, cold)));
        const share = valueOf(crankingAmps(amps, cold)) / amps;
        expect(valueOf(crankingAmps(1_000, cold)) / 1_000).toBeCloseTo(share, 9);
      }),
      { seed: SEED },
    );
  });
});

describe('crankingAmps, refusals', () => {
  it('answers nothing outside -29 to 27 C', () => {
    for (const [degrees, shown] of [
      [-29.1, '-29.1'],
      [27.1, '27.1'],
      [-40, '-40'],
    ] as const) {
      expect(refusal(crankingAmps(1_100, degrees))).toEqual([
        'notEnoughData',
        `temperature is ${shown} C; the guide covers -29 to 27 C only`,
      ]);
    }
  });

  it('refuses what is no rating and what is no temperature', () => {
    expect(refusal(crankingAmps(49, 0))).toEqual(['outOfRange', 'rating is 49; allowed is 50 to 5000 A']);
    expect(refusal(crankingAmps(5_001, 0))[0]).toBe('outOfRange');
    expect(refusal(crankingAmps(-1_100, 0))[0]).toBe('outOfRange');
    expect(refusal(crankingAmps(Number.NaN, 0))[0]).toBe('badInput');
    expect(refusal(crankingAmps(1_100, Number.NaN))[0]).toBe('badInput');
  });
});
