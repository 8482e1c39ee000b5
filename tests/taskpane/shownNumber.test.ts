import { expect, it } from 'vitest';
import { oneDecimal, perCent, signed, wholeNumber } from '../../taskpane/shownNumber.ts';

it('numbers are grouped, and nothing is minus nothing', () => {
  expect([1234.5, 0, -0.2, -1.6].map(wholeNumber)).toEqual(['1,235', '0', '0', '-2']);
  expect([176.24, -0.04, -0.06].map(oneDecimal)).toEqual(['176.2', '0.0', '-0.1']);
});

it('differences carry their sign', () => {
  expect([25, 0, -3, 0.2].map((value) => signed(value))).toEqual(['+25', '0', '-3', '0']);
});

it('chances are never rounded to certainty', () => {
  expect([0, 0.001, 0.62, 0.998, 1].map(perCent)).toEqual(['0 %', 'under 1 %', '62 %', 'over 99 %', '100 %']);
});
