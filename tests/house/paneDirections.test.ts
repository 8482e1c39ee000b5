import { dirname, join, normalize } from 'node:path/posix';
import { describe, expect, it } from 'vitest';
import { importsOf, sourceFiles } from './sourceFiles.ts';

/** Which rooms of the pane a room may look into, itself and the files at the pane's top apart. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  host: [],
  'host/xlsx': ['host'],
  'host/excel': ['host', 'host/xlsx'],
  'host/workbook': ['host', 'host/xlsx', 'plot'],
  plot: [],
  scan: [],
  fill: [],
  computing: ['scan', 'fill', 'host', 'host/xlsx'],
  text: [],
  bench: ['computing', 'text'],
  actions: ['host', 'fill', 'computing', 'text', 'bench'],
  parts: ['plot', 'actions', 'text'],
  views: ['plot', 'fill', 'computing', 'bench', 'text', 'actions', 'parts'],
  page: ['host', 'host/xlsx', 'host/workbook', 'computing', 'text', 'actions', 'parts'],
  commandLine: ['host/xlsx', 'host/workbook'],
};

/** What stands at the top of the pane and puts the rooms together: no room may look back at it. */
const COMPOSING = /^taskpane\/(main|openPane|pane|surroundings)\.tsx?$/;

const roomOf = (path: string): string => {
  const [, first = '', second = ''] = path.split('/');
  if (first.includes('.')) return '';
  return first === 'host' && !second.includes('.') ? `host/${second}` : first;
};
const arrows = sourceFiles('taskpane').flatMap((from) =>
  importsOf(from)
    .filter((to) => to.startsWith('.'))
    .map((to) => ({ from, to: normalize(join(dirname(from), to)) }))
    .filter(({ to }) => to.startsWith('taskpane/')),
);

describe('directions of imports in the pane', () => {
  it('every room is known here', () => {
    const rooms = new Set(sourceFiles('taskpane').map(roomOf));
    rooms.delete('');
    expect([...rooms].sort()).toEqual(Object.keys(MAY_IMPORT).sort());
  });

  it('rooms look only where they may', () => {
    const wrong = arrows.filter(({ from, to }) => {
      const [own, other] = [roomOf(from), roomOf(to)];
      return own !== '' && other !== '' && own !== other && !MAY_IMPORT[own]!.includes(other);
    });
    expect(wrong).toEqual([]);
  });

  it('only the page looks back at what puts the rooms together', () => {
    const wrong = arrows.filter(
      ({ from, to }) => COMPOSING.test(to) && !COMPOSING.test(from) && roomOf(from) !== 'page',
    );
    expect(wrong).toEqual([]);
  });
});
