import { describe, expect, it } from 'vitest';
import * as cells from '../../functions/electrochemistry.ts';
import { fahrenheitFromCelsius } from '../../src/basics/units.ts';
import { cellSpread } from '../../src/electrochemistry/cellSpread.ts';
import { chargeBand } from '../../src/electrochemistry/chargeBand.ts';
import { freezingPoint } from '../../src/electrochemistry/freezingPoint.ts';
import { gravityCharge } from '../../src/electrochemistry/gravityCharge.ts';
import { restVoltage } from '../../src/electrochemistry/restVoltage.ts';
import { stateOfCharge } from '../../src/electrochemistry/stateOfCharge.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { call, errorOf } from './call.ts';

describe('cells of electrochemistry: order of arguments', () => {
  it('STATEOFCHARGE volts, temperature, construction, unit', () => {
    const expected = valueOf(stateOfCharge(12.3, 0, 'flooded'));
    expect(call(cells.stateOfCharge, [[12.3]], [[0]], [['flooded']], 'C')).toEqual([[expected]]);
    expect(call(cells.stateOfCharge, 12.3, 32, 'Flooded', 'f')).toEqual([[expected]]);
    expect(call(cells.stateOfCharge, 12.3, null, null, null)).toEqual([[valueOf(stateOfCharge(12.3))]]);
    expect(call(cells.stateOfCharge, 12.3, 25, 12.7)).toEqual([[valueOf(stateOfCharge(12.3, 25, 12.7))]]);
  });

  it('CHARGEBAND answers three columns without a header', () => {
    const { low, best, high } = valueOf(chargeBand(12.3, -18, 'gel'));
    expect(call(cells.chargeBand, 12.3, -18, 'gel')).toEqual([[low, best, high]]);
    expect(call(cells.chargeBand, 12.3, -0.4, 'gel', 'F')).toEqual([[low, best, high]]);
  });

  it('GRAVITYCHARGE gravity, temperature, unit', () => {
    expect(call(cells.gravityCharge, 1.2, 80, 'F')).toEqual([[valueOf(gravityCharge(1.2, 80 / 3))]]);
    expect(call(cells.gravityCharge, 1.2)).toEqual([[valueOf(gravityCharge(1.2, 25))]]);
  });

  it('RESTVOLTAGE charge, temperature, construction, unit', () => {
    expect(call(cells.restVoltage, 0.4, 14, 'flooded', 'F')).toEqual([
      [valueOf(restVoltage(0.4, -10, 'flooded'))],
    ]);
    expect(call(cells.restVoltage, 0)).toEqual([[valueOf(restVoltage(0))]]);
  });

  it('FREEZINGPOINT answers in the unit that it was asked in', () => {
    expect(call(cells.freezingPoint, 12, 10)).toEqual([[valueOf(freezingPoint(12, 10))]]);
    expect(call(cells.freezingPoint, 12, 50, 'F')).toEqual([
      [fahrenheitFromCelsius(valueOf(freezingPoint(12, 10)))],
    ]);
  });

  it('CELLSPREAD one answer a row, empty cells and zeros left out', () => {
    const rows = [
      [1.265, 1.26, 1.24],
      [1.25, '', 1.2],
      [1.25, 0, null],
      ['', null, 0],
      [1.25, 'low', 1.2],
    ];
    const answers = call(cells.cellSpread, rows);
    expect(answers.slice(0, 2)).toEqual([[valueOf(cellSpread([1.265, 1.26, 1.24]))], [0.05]]);
    expect(answers[2]![0]).toMatchObject({ error: '#N/A' });
    expect(answers[3]).toEqual(['']);
    expect(answers[4]![0]).toEqual({ error: '#VALUE!', message: 'gravity must be a number; given "low"' });
  });
});

describe('cells of electrochemistry: ranges, blanks and errors', () => {
  it('keep the shape of the range and spoil only the bad row', () => {
    const fault = { error: '#REF!', message: '' };
    const answers = call(cells.stateOfCharge, [[12.6], [''], [0], [13.4], ['12.6'], [fault], [25.1]]);
    expect(answers).toHaveLength(7);
    expect(answers[0]).toEqual([valueOf(stateOfCharge(12.6))]);
    expect(answers[1]).toEqual(['']);
    expect(answers[2]).toEqual(['']);
    expect(answers[3]![0]).toMatchObject({ error: '#N/A' });
    expect(answers[4]![0]).toMatchObject({
      error: '#VALUE!',
      message: 'volts must be a number; given "12.6"',
    });
    expect(answers[5]).toEqual([fault]);
    expect(answers[6]![0]).toMatchObject({ error: '#VALUE!' });
  });

  it('take a temperature and a construction for each row', () => {
    expect(call(cells.stateOfCharge, [[12.3], [12.3]], [[0], ['']], [['flooded'], ['']])).toEqual([
      [valueOf(stateOfCharge(12.3, 0, 'flooded'))],
      [valueOf(stateOfCharge(12.3, 25, 'AGM'))],
    ]);
  });

  it('name two shapes that differ', () => {
    const answer = errorOf(call(cells.stateOfCharge, [[12.3], [12.3]], [[0], [1], [2]])[0]![0]);
    expect(answer.error).toBe('#VALUE!');
    expect(answer.message).toContain('2 x 1 and 3 x 1');
  });

  it('refuse an unknown unit and construction', () => {
    expect(call(cells.stateOfCharge, 12.3, 25, 'AGM', 'K')[0]![0]).toMatchObject({ error: '#VALUE!' });
    expect(call(cells.stateOfCharge, 12.3, 25, 'lead')[0]![0]).toMatchObject({ error: '#VALUE!' });
    expect(call(cells.freezingPoint, 12.3, null, 'K')[0]![0]).toMatchObject({ error: '#VALUE!' });
  });

  it('CHARGEBAND keeps three columns in a blank and in a bad row', () => {
    const answers = call(cells.chargeBand, [[''], [13.4], [12.4]]);
    expect(answers.map((row) => row.length)).toEqual([3, 3, 3]);
    expect(answers[0]).toEqual(['', '', '']);
    expect(answers[1]!.every((cell) => errorOf(cell).error === '#N/A')).toBe(true);
  });

  it('RESTVOLTAGE: an empty charge is no charge of 0', () => {
    expect(call(cells.restVoltage, [[''], [0], [null]])).toEqual([[''], [valueOf(restVoltage(0))], ['']]);
  });
});
