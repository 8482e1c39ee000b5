import { describe, expect, it } from 'vitest';
import { ratingAmps } from '../../src/cranking/ratingAmps.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

describe('ratingAmps', () => {
  it('takes 50 to 5000 A as they are', () => {
    for (const amps of [50, 1_100, 5_000]) expect(valueOf(ratingAmps(amps, 'rating'))).toBe(amps);
  });

  it('refuses the rest by the name that its caller gives it', () => {
    expect(refusal(ratingAmps(49.9, 'value'))).toEqual([
      'outOfRange',
      'value is 49.9; allowed is 50 to 5000 A',
    ]);
    expect(refusal(ratingAmps(5_000.1, 'rating'))[0]).toBe('outOfRange');
    expect(refusal(ratingAmps(Number.NaN, 'rating'))).toEqual([
      'badInput',
      'rating must be a number; given NaN',
    ]);
  });
});
