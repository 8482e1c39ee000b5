import { dirname, join, normalize } from 'node:path/posix';
import { describe, expect, it } from 'vitest';
import { importsOf, sourceFiles, textOf } from './sourceFiles.ts';

/** Which rooms a room may look into, itself apart. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  basics: [],
  service: ['basics'],
  label: ['basics'],
  electrochemistry: ['basics', 'service'],
  cranking: ['basics', 'service', 'electrochemistry'],
  storage: ['basics', 'service', 'electrochemistry'],
  life: ['basics'],
  planning: ['basics', 'life', 'service', 'cranking'],
  inventory: ['basics', 'label', 'service', 'electrochemistry', 'cranking', 'storage'],
  report: ['basics', 'planning', 'inventory', 'life', 'service'],
};

/** Packages that the core may use. */
const CORE_PACKAGES = /^(luxon|zod|@stdlib\/[a-z0-9-]+)$/;

const roomOf = (path: string): string => path.split('/')[1]!;
const target = (from: string, to: string): string => normalize(join(dirname(from), to));

type Arrow = { readonly from: string; readonly to: string };
const arrows = (folder: string): Arrow[] =>
  sourceFiles(folder).flatMap((from) =>
    importsOf(from)
      .filter((to) => to.startsWith('.'))
      .map((to) => ({ from, to: target(from, to) })),
  );

const core = sourceFiles('src').filter((path) => path !== 'src/index.ts');

describe('directions of imports', () => {
  it('every room of the core is known here', () => {
    expect([...new Set(core.map(roomOf))].sort()).toEqual(Object.keys(MAY_IMPORT).sort());
  });

  it('rooms of the core look only where they may', () => {
    const wrong = arrows('src').filter(({ from, to }) => {
      if (from === 'src/index.ts') return false;
      return (
        !to.startsWith('src/') ||
        (roomOf(from) !== roomOf(to) && !MAY_IMPORT[roomOf(from)]!.includes(roomOf(to)))
      );
    });
    expect(wrong).toEqual([]);
  });

  it('the core takes no package but the listed ones, and zod in the inventory alone', () => {
    const taken = core.flatMap((from) =>
      importsOf(from)
        .filter((to) => !to.startsWith('.'))
        .map((to) => ({ from, to })),
    );
    expect(taken.filter(({ to }) => !CORE_PACKAGES.test(to))).toEqual([]);
    expect(taken.filter(({ from, to }) => to === 'zod' && roomOf(from) !== 'inventory')).toEqual([]);
  });

  it('cell functions look into the core only, and never into inventory or report', () => {
    const wrong = arrows('functions').filter(
      ({ to }) =>
        !(to.startsWith('functions/') || to.startsWith('src/')) || /^src\/(inventory|report|index)/.test(to),
    );
    expect(wrong).toEqual([]);
  });

  it('nothing imports the pane but the pane', () => {
    const wrong = [...arrows('src'), ...arrows('functions')].filter(({ to }) => to.startsWith('taskpane/'));
    expect(wrong).toEqual([]);
  });

  it('the core reads no clock and draws no random numbers', () => {
    const wrong = core.filter((path) =>
      /\bDate\.now\b|\bnew Date\(\)|Math\.random|DateTime\.(now|local)\(/.test(textOf(path)),
    );
    expect(wrong).toEqual([]);
  });
});
