import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import described from '../../functions/functions.json' with { type: 'json' };
import { functions } from '../../functions/list.ts';
import { ROOT } from './sourceFiles.ts';

const folder = mkdtempSync(join(tmpdir(), 'functions-bundle-'));
const textOf = (file: string): string => readFileSync(join(folder, file), 'utf8');
let script = '';

beforeAll(() => {
  const args = ['webpack', '--mode', 'production', '--config-name', 'functions', '--output-path', folder];
  execFileSync('npx', args, { cwd: ROOT, stdio: 'pipe' });
  script = textOf('functions.js');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the script that Excel loads for the cell functions', () => {
  it('is small', () => {
    expect(gzipSync(script).length).toBeLessThan(120_000);
  });

  it('carries neither pane nor workbook, and nothing that only Node has', () => {
    for (const word of ['createElement', 'ZodError', 'univer', 'hucre', 'Office.onReady', 'node:']) {
      expect(script.includes(word), word).toBe(false);
    }
  });

  it('associates every function when it runs, and one of them answers', () => {
    const associated = new Map<string, (...given: unknown[]) => unknown>();
    const associate = (id: string, run: (...given: unknown[]) => unknown) => associated.set(id, run);
    runInNewContext(script, { CustomFunctions: { associate, Error: class {} }, console });
    expect([...associated.keys()]).toEqual(functions.map(({ id }) => id));
    expect(JSON.stringify(associated.get('STATEOFCHARGE')!([[12.85], [null]], null, null, null))).toBe(
      '[[1],[""]]',
    );
  });

  it('has its metadata beside it', () => {
    expect(JSON.parse(textOf('functions.json'))).toEqual(described);
  });

  it('names the licence of everything in it, and none is of the GPL family', () => {
    const packages = [...textOf('functions.licences.txt').matchAll(/^(\S+) \d[\w.]*: (.+)$/gm)];
    expect(packages.length).toBeGreaterThan(5);
    const allowed = /^(MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0( AND BSL-1\.0)?)$/;
    expect(packages.filter(([, , licence]) => !allowed.test(licence!)).map(([line]) => line)).toEqual([]);
  });
});
