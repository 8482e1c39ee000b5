import { describe, expect, it } from 'vitest';
import type { BatteryTest } from '../../src/cranking/batteryTest.ts';
import { loadTestFloor } from '../../src/cranking/loadTestFloor.ts';
import { judge, verdict } from '../../src/cranking/verdict.ts';
import { CHARGE_BAND_HALF_WIDTH } from '../../src/electrochemistry/chargeBand.ts';
import { freezingPoint } from '../../src/electrochemistry/freezingPoint.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import { stateOfCharge } from '../../src/electrochemistry/stateOfCharge.ts';
import type { Construction } from '../../src/service/battery.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

const decision = (test: BatteryTest): string => {
  const { line, word } = valueOf(judge(test));
  expect(valueOf(verdict(test))).toBe(word);
  return `${line} ${word}`;
};

/** A charged battery in the warm, not read yet. */
const charged: BatteryTest = { least: 980, volts: 12.8, celsius: 20 };

describe('verdict, the cases of its contract', () => {
  it('judges the three of them so', () => {
    expect(valueOf(verdict({ reading: 420, least: 980, volts: 11.7, celsius: -9 }))).toBe('Not judged');
    expect(valueOf(verdict({ reading: 1_150, least: 980, volts: 12.8, celsius: -25 }))).toBe('Serviceable');
    const least = valueOf(loadTestFloor(5));
    expect(decision({ reading: 9.4, least, volts: 12.6, celsius: 5 })).toBe('8 Serviceable');
    expect(decision({ reading: 9.3, least, volts: 12.6, celsius: 5 })).toBe('10 Awaiting charge');
  });
});

describe('verdict, line 1: damage', () => {
  it('condemns whatever else was read', () => {
    expect(decision({ damage: true })).toBe('1 Condemned');
    expect(decision({ ...charged, reading: 1_150, damage: true })).toBe('1 Condemned');
    expect(decision({ volts: 11.7, celsius: -20, damage: true })).toBe('1 Condemned');
    expect(decision({ reading: 9, least: 980, celsius: 60, damage: true })).toBe('1 Condemned');
    expect(decision({ ...charged, reading: 1_150, damage: false })).toBe('8 Serviceable');
  });
});

describe('verdict, line 2: may be frozen', () => {
  // The voltage at which the low end of the band, as acid at 25 C, freezes just 5 K under the battery's temperature.
  const edgeVolts = (celsius: number, construction: Construction): number => {
    let [low, high] = [11.9, 12.7];
    for (let step = 0; step < 60; step += 1) {
      const middle = (low + high) / 2;
      if (valueOf(freezingPoint(middle)) > celsius - 5) low = middle;
      else high = middle;
    }
    const charge = valueOf(stateOfCharge(high, 25, construction)) + CHARGE_BAND_HALF_WIDTH;
    return valueOf(restVoltage(charge, celsius, construction));
  };

  it('holds under 5 K above the freezing point of the low end of the band, and no longer at it', () => {
    for (const construction of ['AGM', 'flooded'] as const) {
      for (const celsius of [-10, -20, -30]) {
        const volts = edgeVolts(celsius, construction);
        const test = { reading: 1_000, least: 980, celsius, construction };
        expect(decision({ ...test, volts: volts - 0.002 })).toBe('2 Not judged');
        expect(decision({ ...test, volts: volts + 0.002 })).not.toMatch(/^2/);
      }
    }
  });

  it('asks from 0 C down', () => {
    expect(decision({ volts: 11.2, celsius: 0 })).toBe('2 Not judged');
    expect(decision({ volts: 11.2, celsius: 0.1 })).toBe('6 Awaiting charge');
  });

  it('takes a battery under 11.3 V for water, whose freezing point is 0 C', () => {
    expect(decision({ volts: 6, celsius: -1 })).toBe('2 Not judged');
    expect(decision({ volts: 11.29, celsius: 0, retest: 2 })).toBe('2 Not judged');
  });

  it('takes the voltage itself where that tells weaker acid than the empty end, at which the band is held', () => {
    // Empty AGM acid freezes near -8.6 C, so it alone would let this battery be charged; its own acid is near -4 C.
    expect(valueOf(freezingPoint(valueOf(restVoltage(0))))).toBeLessThan(-8);
    expect(valueOf(freezingPoint(11.5, -3))).toBeGreaterThan(-5);
    expect(decision({ volts: 11.5, celsius: -3 })).toBe('2 Not judged');
  });

  it('leaves a charged battery alone in any cold', () => {
    expect(decision({ ...charged, reading: 1_000, celsius: -40 })).toBe('8 Serviceable');
    expect(decision({ volts: 13.2, construction: 13.5, celsius: -40 })).toBe('7 Not judged');
  });

  it('never calls a battery cold whose temperature is not given, or frozen whose voltage is not', () => {
    expect(decision({ volts: 11.2 })).toBe('6 Awaiting charge');
    expect(decision({ reading: 1_000, least: 980, celsius: -30 })).toBe('5 Serviceable');
  });
});

describe('verdict, line 3: hot', () => {
  it('holds above 50 C, as far as a battery gets', () => {
    expect(decision({ ...charged, reading: 1_150, celsius: 50 })).toBe('8 Serviceable');
    for (const celsius of [50.1, 60, 60.1, 100])
      expect(decision({ ...charged, reading: 1_150, celsius })).toBe('3 Not judged');
    expect(decision({ reading: 1_150, celsius: 55 })).toBe('3 Not judged');
  });
});

describe('verdict, line 4: not at rest', () => {
  it('holds more than 0.15 V above full', () => {
    expect(decision({ ...charged, reading: 1_150, volts: 13, celsius: 25 })).toBe('8 Serviceable');
    expect(decision({ ...charged, reading: 1_150, volts: 13.001, celsius: 25 })).toBe('4 Not judged');
    expect(decision({ ...charged, reading: 400, volts: 13.4, retest: 2 })).toBe('4 Not judged');
    expect(decision({ volts: 13.4, celsius: -20 })).toBe('4 Not judged');
    expect(decision({ volts: 16 })).toBe('4 Not judged');
  });

  it('measures from the full voltage of this construction', () => {
    expect(decision({ volts: 12.9, construction: 'flooded' })).toBe('4 Not judged');
    expect(decision({ volts: 12.9 })).toBe('7 Not judged');
    expect(decision({ volts: 13.3, construction: 13.2 })).toBe('7 Not judged');
  });
});

describe('verdict, line 5: no rest voltage', () => {
  it('passes a reading at the least and judges none under it', () => {
    expect(decision({ reading: 980, least: 980 })).toBe('5 Serviceable');
    expect(decision({ reading: 979.9, least: 980 })).toBe('5 Not judged');
    expect(decision({ reading: 400, least: 980, retest: 2, celsius: 20 })).toBe('5 Not judged');
    expect(decision({ reading: 0, least: 980 })).toBe('5 Not judged');
  });
});

describe('verdict, line 6: too little charge', () => {
  const at = (charge: number, celsius?: number): number => valueOf(restVoltage(charge, celsius));

  it('holds under 75 % and not at it, whatever the reading', () => {
    for (const celsius of [10, 25, 40]) {
      expect(decision({ ...charged, reading: 1_150, celsius, volts: at(0.749, celsius) })).toBe(
        '6 Awaiting charge',
      );
      expect(decision({ ...charged, reading: 1_150, celsius, volts: at(0.75, celsius) })).toBe(
        '8 Serviceable',
      );
    }
    expect(decision({ volts: at(0.6), reading: 9.5, least: 9.6 })).toBe('6 Awaiting charge');
  });

  it('reads the charge at 25 C where no temperature is given', () => {
    expect(decision({ volts: at(0.75) })).toBe('7 Not judged');
    expect(decision({ volts: at(0.75) - 0.002 })).toBe('6 Awaiting charge');
  });

  it('charges once more at the first retest and condemns at the second', () => {
    expect(decision({ volts: 12.2, celsius: 20, retest: 0 })).toBe('6 Awaiting charge');
    expect(decision({ volts: 12.2, celsius: 20, retest: 1 })).toBe('6 Awaiting charge');
    expect(decision({ volts: 12.2, celsius: 20, retest: 2 })).toBe('6 Condemned');
    expect(decision({ volts: 12.2, celsius: 20, retest: 2, reading: 1_150, least: 980 })).toBe('6 Condemned');
  });

  it('condemns any retest under 11.0 V, and no first test', () => {
    expect(decision({ volts: 11, celsius: 20, retest: 1 })).toBe('6 Awaiting charge');
    expect(decision({ volts: 10.99, celsius: 20, retest: 1 })).toBe('6 Condemned');
    expect(decision({ volts: 10.99, celsius: 20, retest: 2 })).toBe('6 Condemned');
    expect(decision({ volts: 6, celsius: 20 })).toBe('6 Awaiting charge');
  });

  it('counts the charge as 0 under 11.3 V', () => {
    expect(valueOf(judge({ volts: 11.29 })).rest?.charge).toBe(0);
    expect(valueOf(judge({ volts: 11.31 })).rest?.charge).toBe(0);
    expect(decision({ volts: 11.29, retest: 2 })).toBe('6 Condemned');
  });
});

describe('verdict, lines 7 to 11: charged, at rest', () => {
  it('7: asks for a reading', () => {
    expect(decision({ volts: 12.8 })).toBe('7 Not judged');
    expect(decision({ ...charged, retest: 2 })).toBe('7 Not judged');
  });

  it('8: passes a reading at the least, also where the least is a product', () => {
    expect(decision({ ...charged, reading: 980 })).toBe('8 Serviceable');
    expect(decision({ ...charged, reading: 979.9 })).toBe('10 Awaiting charge');
    expect(0.81 * 1_100).toBeGreaterThan(891);
    expect(decision({ ...charged, reading: 891, least: 0.81 * 1_100 })).toBe('8 Serviceable');
    expect(decision({ ...charged, reading: 1_150, retest: 2 })).toBe('8 Serviceable');
    expect(decision({ ...charged, reading: 1_000, celsius: -20 })).toBe('8 Serviceable');
  });

  it('9: holds no reading in amperes against a battery under 0 C', () => {
    for (const retest of [0, 1, 2] as const)
      expect(decision({ ...charged, reading: 500, celsius: -0.1, retest })).toBe('9 Not judged');
    expect(decision({ ...charged, reading: 500, celsius: 0 })).toBe('10 Awaiting charge');
    expect(decision({ ...charged, reading: 500, celsius: 0, retest: 1 })).toBe('11 Condemned');
  });

  it('9: neither where the temperature is not given nor for a load test in volts', () => {
    expect(decision({ reading: 500, least: 980, volts: 12.8 })).toBe('10 Awaiting charge');
    expect(decision({ reading: 500, least: 980, volts: 12.8, retest: 1 })).toBe('11 Condemned');
    expect(decision({ reading: 8, least: 9, volts: 12.8, celsius: -5 })).toBe('10 Awaiting charge');
  });

  it('10 and 11: charges after the first failure, condemns after the next', () => {
    expect(decision({ ...charged, reading: 500 })).toBe('10 Awaiting charge');
    expect(decision({ ...charged, reading: 500, retest: 1 })).toBe('11 Condemned');
    expect(decision({ ...charged, reading: 500, retest: 2 })).toBe('11 Condemned');
    expect(decision({ ...charged, reading: 0, retest: 1 })).toBe('11 Condemned');
  });
});

describe('verdict, refusals', () => {
  it('needs something to judge', () => {
    expect(refusal(verdict({}))[0]).toBe('missing');
    expect(refusal(verdict({ least: 980, celsius: 60, damage: false }))[1]).toContain('all missing');
  });

  it('needs a least only where a reading is to be held against it', () => {
    for (const test of [{ reading: 500 }, { reading: 500, volts: 12.8 }, { reading: 0, volts: 12.8 }]) {
      const [kind, text] = refusal(verdict(test));
      expect(kind).toBe('missing');
      expect(text).toContain('give the least reading that you accept');
    }
    expect(decision({ reading: 500, volts: 12.2 })).toBe('6 Awaiting charge');
    expect(decision({ volts: 12.8 })).toBe('7 Not judged');
  });

  it('refuses a reading and a least in two units, on both sides of 16', () => {
    const [kind, text] = refusal(verdict({ ...charged, reading: 9.4 }));
    expect(kind).toBe('badInput');
    expect(text).toContain('reading is 9.4 and least is 980');
    expect(text).toContain('give both in amperes, or both in volts');
    expect(refusal(verdict({ reading: 500, least: 9.6, volts: 12.8 }))[0]).toBe('badInput');
    expect(refusal(verdict({ reading: 15.9, least: 16, volts: 12.8 }))[0]).toBe('badInput');
    expect(refusal(verdict({ reading: 500, least: 9.6 }))[0]).toBe('badInput');
    expect(decision({ reading: 16, least: 16, volts: 12.8 })).toBe('8 Serviceable');
    expect(decision({ reading: 15.9, least: 15.9, volts: 12.8 })).toBe('8 Serviceable');
  });

  it('refuses numbers that can not be', () => {
    expect(refusal(verdict({ reading: -1, least: 980 }))).toEqual([
      'outOfRange',
      'reading is -1; allowed is 0 to 10000',
    ]);
    expect(refusal(verdict({ reading: 10_001, least: 980 }))[0]).toBe('outOfRange');
    expect(refusal(verdict({ reading: 900, least: 0 }))).toEqual([
      'outOfRange',
      'least is 0; allowed is more than 0 to 10000',
    ]);
    expect(refusal(verdict({ reading: 900, least: -980 }))[0]).toBe('outOfRange');
    expect(refusal(verdict({ reading: Number.NaN, least: 980 }))[0]).toBe('badInput');
    expect(refusal(verdict({ ...charged, construction: 11 }))[0]).toBe('outOfRange');
  });

  it('refuses volts outside 6 to 16, and names a whole 24 V set', () => {
    for (const volts of [5.99, 16.01, 17.9, 32.1])
      expect(refusal(verdict({ ...charged, volts }))[0]).toBe('outOfRange');
    for (const volts of [18, 25.4, 32])
      expect(refusal(verdict({ ...charged, volts }))[1]).toContain('a whole 24 V set');
    for (const volts of [6, 16]) expect(verdict({ ...charged, volts }).ok).toBe(true);
  });

  it('refuses temperatures outside -40 to 100 C', () => {
    for (const celsius of [-40.1, 100.1]) {
      const [kind, text] = refusal(verdict({ ...charged, celsius }));
      expect(kind).toBe('outOfRange');
      expect(text).toContain('-40 to 100 C');
    }
    expect(refusal(verdict({ ...charged, celsius: Number.NaN }))[0]).toBe('badInput');
  });
});
