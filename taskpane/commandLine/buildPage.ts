import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { makePages } from '../../docs/generate/makePages.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const WEBPACK = fileURLToPath(new URL('../../node_modules/webpack/bin/webpack.js', import.meta.url));

/** What can be built apart: the script of the cell functions, the pane for Excel, the page of npm start. */
export type Part = 'functions' | 'pane' | 'page';

/** Builds the page, and the pages to read beside it, into a folder. @returns what the build said where it failed, else undefined */
export function buildPage(folder: string): Promise<string | undefined> {
  return buildParts(folder, ['page']);
}

/**
 * Builds parts, and the pages to read beside them, into a folder.
 * @param officeJs  where the pane finds Microsoft's library: `own` or an address; Microsoft's network where left out
 * @returns what the build said where it failed, else undefined
 */
export function buildParts(
  folder: string,
  parts: readonly Part[],
  officeJs?: string,
): Promise<string | undefined> {
  const names = parts.flatMap((part) => ['--config-name', part]);
  const setting = officeJs === undefined ? [] : ['--env', `officeJs=${officeJs}`];
  const args = [WEBPACK, '--mode', 'production', ...names, ...setting, '--output-path', folder];
  return new Promise((resolve) => {
    const build = spawn(process.execPath, args, { cwd: ROOT });
    let said = '';
    for (const stream of [build.stdout, build.stderr]) stream.on('data', (text) => (said += String(text)));
    build.on('close', (code) => {
      if (code === 0) makePages(`${folder}/docs`);
      resolve(code === 0 ? undefined : said);
    });
  });
}
