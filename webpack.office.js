import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const PACKAGE = fileURLToPath(new URL('node_modules/@microsoft/office-js/', import.meta.url));

/** Where Microsoft serves the library, and the only place that it supports. */
export const MICROSOFTS = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';

/** The folder beside the pane for those who serve the library themselves. */
const OWN_FOLDER = 'office/';

// What the library fetches in Excel for Windows, for Mac and on the web, and in a browser without Excel.
const PARTS = [
  'office.js',
  'excel-win32-16.01.js',
  'excel-mac-16.00.js',
  'excel-web-16.00.js',
  'o15apptofilemappingtable.js',
  'telemetry/oteljs_agave.js',
];

/** Whether a file of the build is Microsoft's, and so is never touched. */
export const isMicrosofts = (name) => name.startsWith(OWN_FOLDER);

/**
 * The address of office.js for the page, and the files to be put beside it: names in the build and where they are.
 * @param setting  undefined for Microsoft's network, `own` for a folder beside the page, else an https address
 */
export function officeScript(setting) {
  if (setting === undefined) return { address: MICROSOFTS, files: {} };
  if (setting === 'own') return { address: `${OWN_FOLDER}office.js`, files: ownFiles() };
  const url = URL.canParse(setting) ? new URL(setting) : undefined;
  // The library looks for its own address by its file name.
  if (url?.protocol === 'https:' && /\/office(\.debug)?\.js$/.test(url.pathname))
    return { address: url.href, files: {} };
  throw new Error(`officeJs must be own, or an https address that ends in /office.js; given: ${setting}`);
}

function ownFiles() {
  const languages = readdirSync(`${PACKAGE}dist`).filter((name) =>
    existsSync(`${PACKAGE}dist/${name}/office_strings.js`),
  );
  const parts = [...PARTS, ...languages.map((name) => `${name}/office_strings.js`)];
  const files = parts.map((name) => [`${OWN_FOLDER}${name}`, `${PACKAGE}dist/${name}`]);
  return Object.fromEntries([...files, [`${OWN_FOLDER}LICENSE.md`, `${PACKAGE}LICENSE.md`]]);
}
