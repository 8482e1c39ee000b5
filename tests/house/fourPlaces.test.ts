import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { functionWords } from '../../docs/generate/metadata.ts';
import { functions, NAMESPACE } from '../../functions/list.ts';
import * as core from '../../src/index.ts';
import { ROOT, sourceFiles, textOf } from './sourceFiles.ts';

const rooms = new Map(functionWords().map(({ id, room }) => [id, room]));
const places = functions.map(({ id, run }) => ({ id, name: run.name, room: rooms.get(id)! }));

describe.each(places)('$id: one word, four places', ({ id, name, room }) => {
  it('is the function’s name in capitals', () => {
    expect(name.toUpperCase()).toBe(id);
    expect(name).toMatch(/^[a-z][A-Za-z]+$/);
  });

  it('is a function of the core in a file of that name', () => {
    expect(textOf(`src/${room}/${name}.ts`)).toMatch(new RegExp(`export (function|const) ${name}\\b`));
    expect(Object.keys(core)).toContain(name);
  });

  it('is a cell function in its room’s file', () => {
    expect(textOf(`functions/${room}.ts`)).toMatch(new RegExp(`export function ${name}\\(`));
  });

  it('is a test file', () => {
    expect(existsSync(`${ROOT}tests/${room}/${name}.test.ts`), `tests/${room}/${name}.test.ts`).toBe(true);
  });

  it('is a heading of docs/functions.md', () => {
    expect(textOf('docs/functions.md')).toContain(`\n### ${NAMESPACE}.${id}\n`);
  });
});

describe('the headings of docs/functions.md', () => {
  it('are the functions, in the order of the list', () => {
    const heads = [...textOf('docs/functions.md').matchAll(/^### (.+)$/gm)].map((found) => found[1]);
    expect(heads).toEqual(functions.map(({ id }) => `${NAMESPACE}.${id}`));
  });

  it('have a tested room behind each', () => {
    const tested = sourceFiles('tests/functions').map((path) => path.split('/').at(-1));
    for (const room of new Set(rooms.values())) expect(tested).toContain(`${room}.test.ts`);
  });
});
