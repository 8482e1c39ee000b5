import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { page } from './page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** The files that are read beside the add-in, and the name that each has there. */
export const PAGES: Readonly<Record<string, string>> = {
  'docs/functions.md': 'functions.html',
  'docs/methods.md': 'methods.html',
  'docs/limits.md': 'limits.html',
  'docs/settings.md': 'settings.html',
  'docs/sources.md': 'sources.html',
  'docs/validation.md': 'validation.html',
  'docs/install.md': 'install.html',
  'docs/privacy.md': 'privacy.html',
  LICENSE: 'licence.html',
};

/** Writes the pages, their pictures and their style sheet into a folder. */
export function makePages(folder: string): void {
  mkdirSync(folder, { recursive: true });
  for (const [file, name] of Object.entries(PAGES)) {
    const text = readFileSync(ROOT + file, 'utf8');
    writeFileSync(`${folder}/${name}`, page(file === 'LICENSE' ? `# Licence\n\n${text}` : text));
  }
  cpSync(`${ROOT}docs/pictures`, `${folder}/pictures`, { recursive: true });
  cpSync(`${ROOT}docs/generate/page.css`, `${folder}/page.css`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) makePages(`${ROOT}dist/docs`);
