import { describe, expect, it } from 'vitest';
import { DAYS_PER_MONTH } from '../../src/basics/units.ts';
import type { PastLife } from '../../src/planning/ownPast.ts';
import { ownPast } from '../../src/planning/ownPast.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';
import { uniformNumbers, weibullLife } from '../fleets/uniform.ts';

const AS_OF = 46_203;

/** Lives of 600 places kept filled for eleven years, under record for `recorded` months; a few taken out good. */
function livesOf(seed: number, recorded: number, scale = 60): PastLife[] {
  const uniform = uniformNumbers(seed);
  const start = AS_OF - recorded * DAYS_PER_MONTH;
  const lives: PastLife[] = [];
  for (let place = 0; place < 600; place += 1) {
    let installed = AS_OF - 132 * DAYS_PER_MONTH * uniform();
    while (installed < AS_OF) {
      const age = weibullLife(uniform, 2.4, scale);
      const good = -200 * Math.log(uniform());
      const end = installed + Math.min(age, good) * DAYS_PER_MONTH;
      if (end > start) lives.push(lifeOf(installed, Math.max(installed, start), end, age < good));
      installed = end;
    }
  }
  return lives;
}

function lifeOf(installed: number, watchedFrom: number, end: number, failed: boolean): PastLife {
  const removed = end <= AS_OF ? end : undefined;
  const age = (Math.min(end, AS_OF) - installed) / DAYS_PER_MONTH;
  const entry = (watchedFrom - installed) / DAYS_PER_MONTH;
  return { watchedFrom, entry, from: age, to: age, failed: failed && removed !== undefined, removed };
}

describe('ownPast', () => {
  it('forecasts one and two years from the rows as they stood, and counts what happened', () => {
    const lives = livesOf(1, 60);
    const trials = valueOf(ownPast(lives, AS_OF));
    expect(trials.map(({ years }) => years)).toEqual([1, 2]);
    for (const { madeOn, happened, inService, failuresKnown, expected, low, high } of trials) {
      const there = lives.filter((life) => life.watchedFrom <= madeOn && !(life.removed! <= madeOn));
      expect(inService).toBe(there.length);
      expect(happened).toBe(there.filter(({ failed }) => failed).length);
      expect(failuresKnown).toBe(lives.filter(({ failed, removed }) => failed && removed! <= madeOn).length);
      expect(low).toBeLessThan(expected);
      expect(high).toBeGreaterThan(expected);
    }
  });

  it('is inside its 90 % limits in about nine of ten fleets', () => {
    const trials = Array.from({ length: 60 }, (_, seed) =>
      valueOf(ownPast(livesOf(10 + seed, 48), AS_OF)),
    ).flat();
    const inside = trials.filter((trial) => trial.inside).length;
    expect(trials).toHaveLength(120);
    // 108 expected; 99 to 116 is within three standard deviations.
    expect(inside).toBeGreaterThanOrEqual(99);
    expect(inside).toBeLessThanOrEqual(116);
  });

  it('knows nothing of what came later', () => {
    const lives = livesOf(2, 60);
    const [trial] = valueOf(ownPast(lives, AS_OF, undefined, [1]));
    const changed = lives.map((life) =>
      life.removed !== undefined && life.removed > trial!.madeOn ? { ...life, failed: !life.failed } : life,
    );
    const [other] = valueOf(ownPast(changed, AS_OF, undefined, [1]));
    expect([other!.expected, other!.low, other!.high]).toEqual([trial!.expected, trial!.low, trial!.high]);
    expect(other!.happened).not.toBe(trial!.happened);
  });

  it('leaves out a year in which nothing was under record', () => {
    expect(valueOf(ownPast(livesOf(3, 18), AS_OF)).map(({ years }) => years)).toEqual([1]);
    expect(valueOf(ownPast(livesOf(3, 6), AS_OF))).toEqual([]);
    expect(valueOf(ownPast([], AS_OF))).toEqual([]);
  });

  it('passes on that a life can be none', () => {
    const broken = { ...lifeOf(AS_OF - 900, AS_OF - 900, AS_OF + 1, false), entry: -4 };
    expect(refusal(ownPast([broken], AS_OF))[0]).toBe('badInput');
  });
});
