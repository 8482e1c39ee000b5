import { describe, expect, it } from 'vitest';
import { acidRestVolts } from '../../src/electrochemistry/acid.ts';
import { acidsOf, constructionFrom } from '../../src/electrochemistry/constructions.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import { stateOfCharge } from '../../src/electrochemistry/stateOfCharge.ts';
import { refusal, valueOf } from './outcomes.ts';

describe('constructions', () => {
  it('sets the acids by the rest voltages at both ends', () => {
    const agm = valueOf(acidsOf('AGM'));
    expect(acidRestVolts(agm.full, 25)).toBeCloseTo(12.85, 9);
    expect(acidRestVolts(agm.empty, 25)).toBeCloseTo(11.85, 9);
    const flooded = valueOf(acidsOf('flooded'));
    expect(acidRestVolts(flooded.full, 80 / 3)).toBeCloseTo(12.65, 9);
    expect(acidRestVolts(flooded.empty, 80 / 3)).toBeCloseTo(11.89, 9);
  });

  it('takes the AGM acids for gel, and the AGM empty end for a number', () => {
    expect(acidsOf('gel')).toEqual(acidsOf('AGM'));
    expect(valueOf(acidsOf(12.85))).toEqual(valueOf(acidsOf('AGM')));
    const own = valueOf(acidsOf(13));
    expect(own.empty).toBe(valueOf(acidsOf('AGM')).empty);
    expect(acidRestVolts(own.full, 25)).toBeCloseTo(13, 9);
  });

  it('near 12 V the whole scale is 0.15 V, so 10 mV are 7 points', () => {
    const step = valueOf(stateOfCharge(11.93, 25, 12)) - valueOf(stateOfCharge(11.92, 25, 12));
    expect(step).toBeGreaterThan(0.06);
    expect(step).toBeLessThan(0.07);
    expect(valueOf(restVoltage(1, 25, 12))).toBeCloseTo(12, 9);
  });

  it.each([
    ['agm', 'AGM'],
    [' FLOODED ', 'flooded'],
    ['Gel', 'gel'],
    ['', 'AGM'],
    ['  ', 'AGM'],
    [null, 'AGM'],
    [undefined, 'AGM'],
    [0, 'AGM'],
    [12.7, 12.7],
    [12, 12],
    [13.5, 13.5],
  ])('reads %j as %j', (given, expected) => expect(valueOf(constructionFrom(given))).toBe(expected));

  it.each([11.99, 13.51, -1, Number.NaN])('refuses %d V', (given) => {
    expect(refusal(constructionFrom(given))).toEqual([
      'outOfRange',
      `construction is ${given}; allowed is 12.0 to 13.5 V`,
    ]);
    expect(refusal(acidsOf(given))[0]).toBe('outOfRange');
  });

  it.each(['lithium', '12.7', true])('refuses %j and names what is allowed', (given) => {
    const [kind, text] = refusal(constructionFrom(given));
    expect(kind).toBe('badInput');
    expect(text).toContain('"AGM", "flooded", "gel" or');
  });
});
