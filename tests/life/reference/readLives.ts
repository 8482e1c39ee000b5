import { readFileSync } from 'node:fs';
import type { LifeKind, LifeRecord } from '../../../src/index.ts';

/** A row of a reference file: a life, and the further columns by name as they stand. */
export type ReferenceLife = { readonly record: LifeRecord; readonly more: Readonly<Record<string, string>> };

/** The rows of a reference file; its first line names where the figures were published. */
export function readReference(name: string): ReferenceLife[] {
  const text = readFileSync(new URL(`./lives/${name}.csv`, import.meta.url), 'utf8');
  const [heads, ...rows] = text
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(','));
  return rows.map((cells) => {
    const { kind, underRecordFrom, from, to, lives, ...more } = Object.fromEntries(
      heads!.map((head, column) => [head, cells[column]!]),
    ) as Record<string, string>;
    const record = {
      kind: kind as LifeKind,
      entry: Number(underRecordFrom),
      from: Number(from),
      to: Number(to),
      count: Number(lives),
    };
    return { record, more };
  });
}

/** The lives of a reference file, of one group or of all. */
export function readLives(name: string, group?: string): LifeRecord[] {
  return readReference(name)
    .filter(({ more }) => group === undefined || more.group === group)
    .map(({ record }) => record);
}
