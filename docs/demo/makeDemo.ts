import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { makeDemo } from './demo.ts';
import { readmeOf } from './readme.ts';
import { demoSettings } from './settings.ts';
import { writeDemo, writeLastMonth } from './workbook.ts';

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

const demo = makeDemo();
await writeFile(here('norrfell-inventory.xlsx'), await writeDemo(demo));
await writeFile(here('norrfell-isvarg-may.xlsx'), await writeLastMonth(demo.lastMonth));
await writeFile(here('norrfell-settings.json'), `${JSON.stringify(demoSettings, null, 2)}\n`);
await writeFile(here('README.md'), readmeOf(demo));
console.log(
  'wrote docs/demo: norrfell-inventory.xlsx, norrfell-isvarg-may.xlsx, norrfell-settings.json, README.md',
);
