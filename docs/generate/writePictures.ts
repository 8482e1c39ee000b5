import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { pictures } from './pictures.ts';

/** Draws the pictures of docs/methods.md into docs/pictures. */
export function writePictures(): void {
  const folder = fileURLToPath(new URL('../pictures/', import.meta.url));
  mkdirSync(folder, { recursive: true });
  for (const { file, svg } of pictures()) writeFileSync(`${folder}${file}`, svg);
}
