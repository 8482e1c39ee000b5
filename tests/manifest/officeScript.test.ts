import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ROOT, textOf } from '../house/sourceFiles.ts';

type Script = { readonly address: string; readonly files: Readonly<Record<string, string>> };
// The configuration of the build is plain JavaScript, which the type checker does not read.
const configuration = `${ROOT}webpack.office.js`;
const { officeScript, MICROSOFTS } = (await import(configuration)) as {
  readonly officeScript: (setting?: string) => Script;
  readonly MICROSOFTS: string;
};

describe('where the pane finds office.js', () => {
  it('is Microsoft’s network where nothing is said, which is what the page’s source names', () => {
    expect(officeScript()).toEqual({ address: MICROSOFTS, files: {} });
    expect(MICROSOFTS).toMatch(/^https:.*\/office\.js$/);
    expect(textOf('taskpane/taskpane.html')).toContain(`<script src="${MICROSOFTS}"></script>`);
  });

  it('is another network where its address is given', () => {
    const address = 'https://office.example.org/lib/1/hosted/office.js';
    expect(officeScript(address)).toEqual({ address, files: {} });
  });

  it('is a folder beside the page: the host files of three platforms, the texts of every language, the licence', () => {
    const { address, files } = officeScript('own');
    expect(address).toBe('office/office.js');
    for (const file of Object.values(files)) expect(existsSync(file), file).toBe(true);
    const names = Object.keys(files).map((name) => name.slice('office/'.length));
    const texts = names.filter((name) => name.endsWith('/office_strings.js'));
    expect(texts.length).toBeGreaterThan(100);
    expect(names.filter((name) => !texts.includes(name))).toEqual([
      'office.js',
      'excel-win32-16.01.js',
      'excel-mac-16.00.js',
      'excel-web-16.00.js',
      'o15apptofilemappingtable.js',
      'telemetry/oteljs_agave.js',
      'LICENSE.md',
    ]);
  });

  it.each(['http://office.example.org/office.js', 'https://office.example.org/other.js', '', 'OWN'])(
    'is refused with a sentence: %s',
    (setting) => expect(() => officeScript(setting)).toThrow('officeJs must be own, or an https address'),
  );
});

describe('npm run build', () => {
  it.each(['officeJs=http://a.example/office.js', 'colour=red'])(
    'refuses --env %s and takes nothing away',
    (env) => {
      const args = ['--import', 'tsx/esm', 'taskpane/commandLine/build.ts', '--env', env];
      const { status, stderr } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' });
      expect([status, stderr]).toEqual([
        2,
        `--env is ${env}; it can be officeJs=own or officeJs=https://…/office.js\n`,
      ]);
    },
  );
});

describe('the page of the pane', () => {
  const scripts = [...textOf('taskpane/taskpane.html').matchAll(/<script ?(\w*) src="([^"]+)"/g)];

  it('loads the library, then the cell functions alone, and the rest after them', () => {
    expect(scripts.map(([, when, source]) => [when, source])).toEqual([
      ['', MICROSOFTS],
      ['', 'functions.js'],
      ['defer', 'taskpane.js'],
    ]);
  });

  it('has no script and no style of its own', () => {
    expect(textOf('taskpane/taskpane.html')).not.toMatch(/<style| style=|<script[^>]*>[^<]| on\w+=/);
  });
});
