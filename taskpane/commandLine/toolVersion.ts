import { readFileSync } from 'node:fs';

/** Name and version of the tool, from its package file. */
export function toolVersion(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return `Crankbook ${(JSON.parse(text) as { version: string }).version}`;
}
