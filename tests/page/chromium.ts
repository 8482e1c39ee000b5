import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { chromium } from 'playwright-core';
import { ROOT } from '../house/sourceFiles.ts';

/** Where Chrome, Edge and Chromium are commonly installed. */
const INSTALLED: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  linux: [
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/microsoft-edge',
    '/snap/bin/chromium',
  ],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
    'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

const CACHE = `${ROOT}node_modules/.cache/chromium`;

/** The package looks for its fonts where only its own host has them; without any font the browser ends at once. */
const FONTS = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${CACHE}/fonts</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${CACHE}/fonts-cache</cachedir>
  <alias><family>sans-serif</family><prefer><family>Open Sans</family></prefer></alias>
  <alias binding="same"><family>Arial</family><prefer><family>Open Sans</family></prefer></alias>
</fontconfig>
`;

/**
 * Ours alone. The package that carries the browser would switch web security off, which is what these tests are about.
 * A container has neither a sandbox for root nor much shared memory.
 */
const ARGUMENTS = ['--no-sandbox', '--disable-dev-shm-usage', '--force-color-profile=srgb'];

/** Starts a browser: the installed one, else the one that a package carries for Linux on x64. */
export async function startChromium(): Promise<Browser> {
  const installed = installedBrowser();
  const executablePath = installed ?? (await carriedBrowser());
  return chromium.launch({ executablePath, args: ARGUMENTS, headless: true });
}

function installedBrowser(): string | undefined {
  const named = process.env['CHROME'];
  if (named !== undefined && named !== '') {
    if (existsSync(named)) return named;
    throw new Error(`CHROME names ${named}, and there is no such file`);
  }
  return INSTALLED[process.platform]?.find((file) => existsSync(file));
}

async function carriedBrowser(): Promise<string> {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error(
      `these tests need Chrome, Edge or Chromium: none was found on this ${process.platform} machine (${process.arch}); install one, or name it in CHROME`,
    );
  }
  mkdirSync(CACHE, { recursive: true });
  writeFileSync(`${CACHE}/fonts.conf`, FONTS);
  process.env['FONTCONFIG_FILE'] = `${CACHE}/fonts.conf`;
  // Both are read when the package is loaded: where it unpacks, and that it brings its own libraries.
  const temporary = process.env['TMPDIR'];
  process.env['TMPDIR'] = CACHE;
  process.env['AWS_LAMBDA_JS_RUNTIME'] = 'nodejs20.x';
  try {
    const { default: carried } = await import('@sparticuz/chromium');
    return await carried.executablePath();
  } finally {
    if (temporary === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = temporary;
  }
}
