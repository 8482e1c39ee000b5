import { describe, expect, it } from 'vitest';
import { DEFAULT_LIFE_PRIOR } from '../../src/life/lifePrior.ts';
import { lifeByGroup } from '../../src/planning/lifeByGroup.ts';
import type { Life } from '../../src/service/battery.ts';
import { valueOf } from '../electrochemistry/outcomes.ts';
import { AS_OF, inventedFleet, life } from './inventedFleet.ts';

/** Twelve failures of one type, at ages around a middle. */
const failures = (type: string, middle: number, from: number): Life[] =>
  Array.from({ length: 12 }, (_, i) =>
    life(from + i, middle * (0.6 + 0.07 * i), { type, entry: 0, removed: AS_OF - 1, meaning: 'failed' }),
  );

describe('lifeByGroup', () => {
  it('tells a type that lasts half as long from another', () => {
    const lives = [...failures('6T AGM', 60, 1), ...failures('6T flooded', 30, 100)];
    const found = valueOf(lifeByGroup([], lives, DEFAULT_LIFE_PRIOR, 'type'));
    expect(found.chanceAlike!).toBeLessThan(0.001);
    const [agm, flooded] = ['6T AGM', '6T flooded'].map((type) =>
      found.groups.find(({ name }) => name === type)!,
    );
    expect(agm!.halfGone.best / flooded!.halfGone.best).toBeCloseTo(2, 0);
    expect(agm).toMatchObject({ lives: 12, failures: 12 });
  });

  it('does not tell two apart that are alike', () => {
    const lives = [...failures('6T AGM', 60, 1), ...failures('6T flooded', 61, 100)];
    expect(valueOf(lifeByGroup([], lives, DEFAULT_LIFE_PRIOR, 'type')).chanceAlike!).toBeGreaterThan(0.5);
  });

  it('names the groups that it can not compare, and says nothing where one is left', () => {
    const lives = [...failures('6T AGM', 60, 1), life(200, 12, { type: '6T gel' })];
    const found = valueOf(lifeByGroup([], lives, DEFAULT_LIFE_PRIOR, 'type'));
    expect(found.chanceAlike).toBeUndefined();
    expect(found.notCompared).toEqual(['6T gel']);
    expect(found.groups.map(({ name }) => name)).toEqual(['6T AGM', '6T gel']);
  });

  it('every life stands in one group', () => {
    const { batteries, lives } = inventedFleet();
    for (const by of ['type', 'site', 'maker'] as const) {
      const { groups } = valueOf(lifeByGroup(batteries, lives, DEFAULT_LIFE_PRIOR, by));
      expect(groups.reduce((sum, group) => sum + group.lives, 0)).toBe(
        lives.filter(({ to, entry }) => to > entry).length,
      );
    }
  });
});
