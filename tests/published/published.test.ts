import { describe, expect, it } from 'vitest';
import { agrees, allowedDifference } from './check.ts';
import { checks } from './index.ts';

describe('published values', () => {
  it.each(checks.filter((check) => check.knownMiss === undefined))('$id $quantity ($source)', (check) => {
    if (typeof check.expected === 'number') {
      expect(Math.abs(Number(check.ours()) - check.expected)).toBeLessThanOrEqual(allowedDifference(check));
    } else expect(check.ours()).toBe(check.expected);
  });

  it('known misses still miss, each with its reason', () => {
    for (const check of checks.filter((each) => each.knownMiss !== undefined)) {
      expect(agrees(check), `${check.id} now agrees: take it off the known misses`).toBe(false);
      expect(check.knownMiss!.length).toBeGreaterThan(20);
    }
  });

  it('has one row for each id', () => {
    const ids = checks.map((check) => check.id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
