import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, SETTING_KEYS } from '../../src/inventory/settings.ts';
import { settingsToRows } from '../../src/inventory/settingsRows.ts';
import { textOf } from '../house/sourceFiles.ts';

const told = new Map(
  textOf('docs/settings.md')
    .split('\n')
    .flatMap((line) => {
      const [, key, value] = /^\| `([^`]+)` *\| *([^|]*?) *\|/.exec(line) ?? [];
      return key === undefined ? [] : [[key, value!] as const];
    }),
);

describe('docs/settings.md', () => {
  it('tells the default of every setting that has one', () => {
    for (const [key, value] of settingsToRows(DEFAULT_SETTINGS).slice(1))
      expect([key, told.get(key)]).toEqual([key, String(value)]);
  });

  it('knows every key, and no other', () => {
    const tops = new Set([...told.keys()].map((key) => key.split('.')[0]!));
    expect([...tops].sort()).toEqual([...SETTING_KEYS].sort());
  });
});
