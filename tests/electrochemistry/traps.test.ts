import { describe, expect, it } from 'vitest';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../src/basics/units.ts';
import {
  acidFromGravity,
  acidGravity,
  acidRestVolts,
  CELSIUS_AT_80_F,
} from '../../src/electrochemistry/acid.ts';
import { cellVoltageBode1977 } from '../../src/electrochemistry/acid.bode1977.ts';
import { acidDensityPerry } from '../../src/electrochemistry/acid.perry.ts';
import { acidFreezesAt, freezingPoint } from '../../src/electrochemistry/freezingPoint.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import { stateOfCharge } from '../../src/electrochemistry/stateOfCharge.ts';
import { valueOf } from './outcomes.ts';

/** The BCI-credited table at 80 F: specific gravity and volts. */
const COPIED_TABLE = [
  [1.265, 12.65],
  [1.225, 12.45],
  [1.19, 12.24],
  [1.155, 12.06],
  [1.12, 11.89],
] as const;

const voltsOfGravity = (gravity: number): number =>
  acidRestVolts(valueOf(acidFromGravity(gravity)), CELSIUS_AT_80_F);

describe('trap 1: the rule of 24 mV per 10 F, which many pages print, is not used', () => {
  it.each([0, 0.25, 0.5, 0.75, 1])('at charge %d ten degrees F are 6.5 to 7.6 mV', (charge) => {
    for (const construction of ['AGM', 'flooded'] as const) {
      const at = (f: number): number => valueOf(restVoltage(charge, celsiusFromFahrenheit(f), construction));
      expect(at(82) - at(72)).toBeGreaterThan(0.0065);
      expect(at(82) - at(72)).toBeLessThan(0.0076);
    }
  });

  it('at 0 F the rule would be 146 mV and 15 to 20 points of charge out', () => {
    const zeroF = celsiusFromFahrenheit(0);
    const [full, ruled] = [valueOf(restVoltage(1, zeroF, 'flooded')), 12.65 - 8 * 0.024];
    expect(full - ruled).toBeCloseTo(0.146, 2);
    expect(1 - valueOf(stateOfCharge(ruled, zeroF, 'flooded'))).toBeGreaterThan(0.18);
    expect(1 - valueOf(stateOfCharge(12.85 - 8 * 0.024, zeroF, 'AGM'))).toBeGreaterThan(0.13);
  });
});

describe('trap 2: the freezing column of the widely copied table is not used', () => {
  it.each([
    [1.155, -16],
    [1.12, -10],
  ])('%d does not freeze as late as %d F', (gravity, copied) => {
    expect(fahrenheitFromCelsius(acidFreezesAt(gravity))).toBeGreaterThan(copied + 18);
  });

  it('a flooded battery at 11.89 V freezes near -10 C and is not safe at -20 C', () => {
    const point = valueOf(freezingPoint(11.89, CELSIUS_AT_80_F));
    expect(point).toBeGreaterThan(-12);
    expect(point).toBeLessThan(-9);
  });
});

describe('trap 3: specific gravity at 80 F is against water at 80 F', () => {
  /** Density of water [g/mL] at 39, 60 and 80 F. */
  const WATER = { '39 F': 0.99997, '60 F': 0.99904, '80 F': 0.99661 };
  const worst = (water: number): number =>
    Math.max(
      ...COPIED_TABLE.map(([gravity, volts]) =>
        Math.abs(voltsOfGravity((gravity * water) / 0.99661) - volts),
      ),
    );

  it('of the three, water at 80 F fits the copied table best, within 19 mV', () => {
    expect(worst(WATER['80 F'])).toBeLessThan(0.0195);
    expect(worst(WATER['60 F'])).toBeGreaterThan(worst(WATER['80 F']));
    expect(worst(WATER['39 F'])).toBeGreaterThan(worst(WATER['60 F']));
  });

  it('35 % acid is 1.2594 so, 1.2564 against water at 60 F', () => {
    expect(acidGravity(5.4901)).toBeCloseTo(1.2594, 4);
  });
});

describe('trap 4: the density is right in the heat too', () => {
  /** Laliberté 2009 for sulphuric acid (formula from memory), w as a share; water at 50 C 0.98804, at 25 C 0.99705 g/mL. */
  const laliberte = (w: number, t: number, water: number): number => {
    const [c0, c1, c2, c3, c4] = [
      70.8395152347122, 142.352693909248, 0.68779459618793, 0.00649299683206703, 1667.23864629522,
    ];
    const volume = (w + c2 + c3 * t) / ((c0 * w + c1) * Math.exp(1e-6 * (t + c4) ** 2));
    return 1 / ((1 - w) / (1000 * water) + w * volume) / 1000;
  };

  it.each([30, 35, 40])(
    '%d %% acid at 50 C agrees with a second correlation within 0.002 g/mL',
    (percent) => {
      expect(Math.abs(acidDensityPerry(percent, 50) - laliberte(percent / 100, 50, 0.98804))).toBeLessThan(
        0.002,
      );
      expect(Math.abs(acidDensityPerry(percent, 25) - laliberte(percent / 100, 25, 0.99705))).toBeLessThan(
        0.002,
      );
    },
  );
});

describe('trap 5: remembered voltages at 0 C are not used, only slopes about the voltage at 25 C', () => {
  it.each([0.5, 1, 2, 3, 4, 5, 6, 7])('%d mol/kg at 25 C is the polynomial itself', (molality) => {
    expect(acidRestVolts(molality, 25)).toBe(6 * cellVoltageBode1977(molality));
  });

  // Independent slope of a cell from activities [mV/K]; a remembered voltage would be 4 to 21 mV low here.
  it.each([
    [2, 0.213],
    [3, 0.242],
    [4, 0.229],
    [5, 0.198],
    [6, 0.174],
  ])('%d mol/kg at 0 C lies within 1 mV a cell of the independent slope', (molality, slope) => {
    const fall = (1000 * (acidRestVolts(molality, 25) - acidRestVolts(molality, 0))) / 6;
    expect(Math.abs(fall - 25 * slope)).toBeLessThan(1.01);
  });
});

describe('trap 6: specific gravity + 0.845 is not the cell voltage of a discharged battery', () => {
  it.each([1.225, 1.25, 1.265])('%d: the rule is within 5 mV a cell', (gravity) => {
    expect(Math.abs(voltsOfGravity(gravity) / 6 - (gravity + 0.845))).toBeLessThan(0.005);
  });

  it('1.120: the rule is 100 mV low for the battery', () => {
    expect(voltsOfGravity(1.12) - 6 * (1.12 + 0.845)).toBeCloseTo(0.1, 2);
  });
});
