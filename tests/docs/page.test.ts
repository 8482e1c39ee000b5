import { JSDOM } from 'jsdom';
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makePages, PAGES } from '../../docs/generate/makePages.ts';
import { headingAddress, page } from '../../docs/generate/page.ts';
import described from '../../functions/functions.json' with { type: 'json' };
import { withHelpAddresses } from '../../manifest/helpAddresses.ts';

const folder = mkdtempSync(join(tmpdir(), 'pages-'));
makePages(folder);
const documents = new Map(
  Object.values(PAGES).map((name) => [
    name,
    new JSDOM(readFileSync(join(folder, name), 'utf8')).window.document,
  ]),
);

/** Links inside the pages that lead nowhere. */
const broken = (name: string): string[] =>
  [...documents.get(name)!.querySelectorAll('a[href]')]
    .map((link) => link.getAttribute('href')!)
    .filter((href) => !/^[a-z]+:/i.test(href))
    .filter((href) => {
      const [file = '', heading] = href.split('#');
      const target = documents.get(file === '' ? name : file);
      if (target === undefined) return true;
      return heading !== undefined && target.getElementById(decodeURIComponent(heading)) === null;
    });

describe('the pages that are served with the add-in', () => {
  it.each([...documents.keys()])('%s: every link leads to a page and a heading that are there', (name) => {
    expect(broken(name)).toEqual([]);
  });

  it.each([...documents.keys()])('%s: every picture is there, and nothing runs', (name) => {
    const document = documents.get(name)!;
    const pictures = [...document.querySelectorAll('img')].map((each) => each.getAttribute('src')!);
    const there = readdirSync(join(folder, 'pictures')).map((file) => `pictures/${file}`);
    expect(pictures.filter((each) => !there.includes(each))).toEqual([]);
    expect(document.querySelectorAll('script, style, [style]').length).toBe(0);
  });

  it('the help address of each function is a heading', () => {
    const address = 'https://addins.example.org/crankbook';
    const { functions } = withHelpAddresses(described, address) as typeof described & {
      functions: { helpUrl: string }[];
    };
    expect(functions.length).toBe(described.functions.length);
    for (const { helpUrl } of functions) {
      const [file, heading] = helpUrl.slice(`${address}/docs/`.length).split('#');
      expect(documents.get(file!)!.getElementById(heading!)?.tagName, helpUrl).toBe('H3');
    }
  });

  it('signs of HTML in a text are shown, not meant', () => {
    expect(page('# A <b> & "c"')).toContain('<title>A &lt;b&gt; &amp; &quot;c&quot;</title>');
    expect(headingAddress('CRANK.STATEOFCHARGE')).toBe('crankstateofcharge');
  });
});
