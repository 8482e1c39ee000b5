import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lifeFromRules, priorFromRules, survival } from '../../src/index.ts';
import { valueOf } from '../published/check.ts';
import { SEED } from './lives.ts';

describe('lifeFromRules', () => {
  it('by hand: 1 - 1/e by the scale, a quarter of that hazard at half of it', () => {
    const { shape, scale } = valueOf(lifeFromRules(-Math.expm1(-0.25), 30, -Math.expm1(-1), 60));
    expect(shape).toBeCloseTo(2, 12);
    expect(scale).toBeCloseTo(60, 10);
  });

  it('goes through both rules, whichever comes first', () => {
    const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 61, max: 200 }),
        (a, b, young, old) => {
          fc.pre(Math.abs(a - b) > 1e-3);
          const [few, many] = [Math.min(a, b), Math.max(a, b)];
          const life = valueOf(lifeFromRules(few, young, many, old));
          expect(valueOf(survival(young, life.shape, life.scale))).toBeCloseTo(1 - few, 9);
          expect(valueOf(survival(old, life.shape, life.scale))).toBeCloseTo(1 - many, 9);
          const turned = valueOf(lifeFromRules(many, old, few, young));
          expect(turned.shape).toBeCloseTo(life.shape, 9);
        },
      ),
      SEED,
    );
  });

  it('has the shape of the belief that is made from the same rules', () => {
    const { shape } = valueOf(lifeFromRules(0.1, 36, 0.5, 54));
    expect(valueOf(priorFromRules(0.1, 36, 0.5, 54)).sigma).toBeCloseTo(1 / shape, 12);
  });

  it.each([
    [0, 36, 0.5, 54, 'outOfRange', 'share1'],
    [0.1, 0, 0.5, 54, 'outOfRange', 'month1'],
    [0.1, 36, 1.5, 54, 'outOfRange', 'share2'],
    [0.1, 36, 0.5, -54, 'outOfRange', 'month2'],
    [0.5, 36, 0.1, 54, 'badInput', 'rules'],
    [0.1, 36, 0.1, 54, 'badInput', 'rules'],
    [0.1, 36, 0.5, 36, 'badInput', 'rules'],
  ])('refuses lifeFromRules(%d, %d, %d, %d)', (share1, month1, share2, month2, kind, argument) => {
    expect(lifeFromRules(share1, month1, share2, month2)).toMatchObject({ problem: { kind, argument } });
  });
});
