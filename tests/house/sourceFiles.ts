import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Paths of all .ts and .tsx files below a folder of the project, relative to it, in order. */
export function sourceFiles(folder: string): string[] {
  return readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => `${folder}/${path}`)
    .sort();
}

/** The text of a file of the project. */
export function textOf(path: string): string {
  return readFileSync(`${ROOT}${path}`, 'utf8');
}

/** Relative and package imports of a file, types included. */
export function importsOf(path: string): string[] {
  return [
    ...textOf(path).matchAll(/^(?:import|export)\b(?:[^'";]*?from)?\s*'([^']+)'|\bimport\('([^']+)'\)/gm),
  ].map((found) => found[1] ?? found[2]!);
}
