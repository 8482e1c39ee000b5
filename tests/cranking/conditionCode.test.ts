import { describe, expect, it } from 'vitest';
import type { BatteryTest } from '../../src/cranking/batteryTest.ts';
import { CONDITION_CODES, conditionCode } from '../../src/cranking/conditionCode.ts';
import { judge } from '../../src/cranking/verdict.ts';
import type { Whereabouts } from '../../src/service/battery.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';

const charged: BatteryTest = { least: 800, volts: 12.8, celsius: 20 };

const code = (test: BatteryTest, where: Whereabouts = 'inStock', label?: number): string | undefined =>
  conditionCode(valueOf(judge(test)), where, label);

describe('conditionCode', () => {
  it('A for a serviceable battery, B for one under 90 % of its label', () => {
    expect(code({ ...charged, reading: 1_000 }, 'inStock', 1_100)).toBe('A');
    expect(code({ ...charged, reading: 990 }, 'inStock', 1_100)).toBe('A');
    expect(code({ ...charged, reading: 989.9 }, 'inStock', 1_100)).toBe('B');
    expect(code({ ...charged, reading: 989.9 }, 'removed', 1_100)).toBe('B');
    expect(code({ reading: 850, least: 800 }, 'inStock', 1_100)).toBe('B');
  });

  it('A where no label is known or the reading is no amperes', () => {
    expect(code({ ...charged, reading: 850 })).toBe('A');
    expect(code({ ...charged, reading: 9.7, least: 9.6 }, 'inStock', 1_100)).toBe('A');
  });

  it('E when only discharged, F after a failing test', () => {
    expect(code({ volts: 12.2, celsius: 20 })).toBe('E');
    expect(code({ volts: 12.2, celsius: 20, reading: 300, least: 800 })).toBe('E');
    expect(code({ ...charged, reading: 500 })).toBe('F');
    expect(code({ volts: 12.2, celsius: 20, retest: 1 })).toBe('F');
  });

  it('H for a condemned battery, whatever condemned it', () => {
    for (const test of [
      { damage: true },
      { volts: 12.2, celsius: 20, retest: 2 },
      { ...charged, reading: 500, retest: 1 },
    ] as const)
      expect(code(test)).toBe('H');
  });

  it('K for a turn-in that is not judged, nothing for stock', () => {
    expect(code(charged, 'removed')).toBe('K');
    expect(code({ volts: 11.7, celsius: -9 }, 'removed')).toBe('K');
    expect(code(charged, 'inStock')).toBeUndefined();
  });

  it('nothing for a battery in service', () => {
    for (const test of [
      { ...charged, reading: 1_000 },
      { ...charged, reading: 500 },
      { damage: true },
      charged,
    ])
      expect(code(test, 'inService', 1_100)).toBeUndefined();
  });

  it('has words for every code that it can suggest', () => {
    expect(Object.keys(CONDITION_CODES).sort()).toEqual(['A', 'B', 'E', 'F', 'H', 'K']);
  });
});
