import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { makePages } from '../../docs/generate/makePages.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const WEBPACK = fileURLToPath(new URL('../../node_modules/webpack/bin/webpack.js', import.meta.url));

/** Builds the page, and the pages to read beside it, into a folder. @returns what the build said where it failed, else undefined */
export function buildPage(folder: string): Promise<string | undefined> {
  const args = [WEBPACK, '--mode', 'production', '--config-name', 'page', '--output-path', folder];
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
