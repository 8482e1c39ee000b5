import { describe, expect, it } from 'vitest';
import * as cells from '../../functions/storage.ts';
import { rechargeBy } from '../../src/storage/rechargeBy.ts';
import { selfDischarge } from '../../src/storage/selfDischarge.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { call, errorOf } from './call.ts';

describe('cells of storage', () => {
  it('SELFDISCHARGE days, temperature, construction, unit', () => {
    const expected = valueOf(selfDischarge(60, 10, 'flooded'));
    expect(call(cells.selfDischarge, 60, 10, 'flooded')).toEqual([[expected]]);
    expect(call(cells.selfDischarge, [[60]], [[50]], [['flooded']], 'F')).toEqual([[expected]]);
    expect(call(cells.selfDischarge, [[0], ['']], 20, null, null)).toEqual([[0], ['']]);
  });

  it('RECHARGEBY chargedOn, temperature, construction, unit, mostMonths', () => {
    const expected = valueOf(rechargeBy(46_037, 10, 'flooded', 2));
    expect(call(cells.rechargeBy, 46_037, 10, 'flooded', null, 2)).toEqual([[expected]]);
    expect(call(cells.rechargeBy, '2026-01-15', 50, 'flooded', 'F', 2)).toEqual([[expected]]);
    expect(call(cells.rechargeBy, 46_037, 10)).toEqual([[valueOf(rechargeBy(46_037, 10))]]);
    expect(call(cells.rechargeBy, 46_037, 10, '', '', 0)).toEqual([[valueOf(rechargeBy(46_037, 10))]]);
  });

  it('a blank date is blank; a date that reads two ways, and a missing temperature, are refused', () => {
    const answers = call(cells.rechargeBy, [[''], [0], ['03/04/2026'], [46_037]], [[20], [20], [20], ['']]);
    expect(answers.slice(0, 2)).toEqual([[''], ['']]);
    expect(answers[2]![0]).toMatchObject({ error: '#VALUE!' });
    expect(errorOf(answers[2]![0]).message).toContain('reads two ways');
    expect(answers[3]![0]).toEqual({ error: '#VALUE!', message: 'temperature is missing' });
    expect(errorOf(call(cells.selfDischarge, 30, null)[0]![0]).message).toBe('temperature is missing');
  });

  it('mostMonths that is no number spoils the answer, not the sheet', () => {
    expect(call(cells.rechargeBy, 46_037, 10, 'AGM', 'C', 'six')[0]![0]).toMatchObject({ error: '#VALUE!' });
    expect(errorOf(call(cells.rechargeBy, 46_037, 10, 'AGM', 'C', 99)[0]![0]).message).toContain(
      'allowed is 1 to 60',
    );
  });
});
