import { spawn } from 'node:child_process';

/** What opens an address on this kind of machine. */
export function openingCommand(
  platform: NodeJS.Platform,
  address: string,
): readonly [string, readonly string[]] {
  if (platform === 'darwin') return ['open', [address]];
  // The empty text is the window's title, which `start` would otherwise take the address for.
  if (platform === 'win32') return ['cmd', ['/c', 'start', '', address]];
  return ['xdg-open', [address]];
}

/** Opens an address in the user's browser where there is one; where there is none, nothing happens. */
export function openBrowser(address: string): void {
  const [command, args] = openingCommand(process.platform, address);
  const opening = spawn(command, args, { stdio: 'ignore', detached: true });
  opening.on('error', () => undefined);
  opening.unref();
}
