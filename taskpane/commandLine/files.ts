import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Refusal } from './exit.ts';

/** A path as the user meant it: relative to the folder in which the command was typed. */
function userPath(path: string): string {
  return resolve(process.env.INIT_CWD ?? process.cwd(), path);
}

/** The bytes of a file that the user named. */
export function readBytes(path: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(userPath(path)));
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new Refusal(
      1,
      `${path} can't be read: ${code === 'ENOENT' ? 'there is no such file' : String(code)}`,
    );
  }
}

/** Writes files all or none: each under a temporary name first, then renamed. */
export function writeFiles(
  files: readonly { readonly path: string; readonly bytes: Uint8Array | string }[],
): void {
  const parts = files.map(({ path, bytes }) => ({
    path: userPath(path),
    part: `${userPath(path)}.part`,
    bytes,
  }));
  try {
    for (const { part, bytes } of parts) writeFileSync(part, bytes);
    for (const { path, part } of parts) renameSync(part, path);
  } catch (error) {
    for (const { part } of parts) rmSync(part, { force: true });
    throw new Refusal(1, `the result can't be written: ${(error as Error).message}`);
  }
}
