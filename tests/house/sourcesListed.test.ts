import { describe, expect, it } from 'vitest';
import { checks } from '../published/index.ts';
import { sourceFiles, textOf } from './sourceFiles.ts';

const listed = [...textOf('docs/sources.md').matchAll(/^\|\s*`?([A-Za-z][A-Za-z0-9-]+)`?\s*\|/gm)]
  .map((row) => row[1]!)
  .filter((key) => key !== 'key');

const keysIn = (path: string): string[] =>
  [...textOf(path).matchAll(/@source\s+([A-Za-z][A-Za-z0-9-]*)/g)].map((found) => found[1]!);

const inCode = sourceFiles('src').flatMap((path) => keysIn(path).map((key) => ({ path, key })));

/** Words that stand for a source where there is none to name. */
const NO_SOURCE = ['common practice', 'from memory', 'computed here'];

describe('sources', () => {
  it('every @source key of the core is a row of docs/sources.md', () => {
    expect(inCode.filter(({ key }) => !listed.includes(key))).toEqual([]);
  });

  it('every source of a published check is a row of docs/sources.md or says that there is none', () => {
    const unknown = checks
      .map(({ source }) => source)
      .filter((key) => !listed.includes(key) && !NO_SOURCE.includes(key));
    expect([...new Set(unknown)]).toEqual([]);
  });

  it('every row of docs/sources.md is used', () => {
    const everywhere = [...sourceFiles('src'), ...sourceFiles('tests'), ...sourceFiles('functions')]
      .map(textOf)
      .join('\n');
    expect(listed.filter((key) => !everywhere.includes(key))).toEqual([]);
  });

  it('no key stands twice', () => {
    expect(listed.filter((key, index) => listed.indexOf(key) !== index)).toEqual([]);
  });
});
