import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { buildParts } from './buildPage.ts';
import { Refusal, runCommand } from './exit.ts';
import { parsedOptions } from './options.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));

const HELP = `Builds everything that a web server needs to serve: the pane for Excel, the cell functions, the page of npm start, the
help. The folder dist/ is emptied first.

npm run build -- [--env officeJs=own|ADDRESS]

  --env officeJs=own      puts the files of Microsoft's library that Excel needs into dist/office/, for closed networks
  --env officeJs=ADDRESS  takes the library from another network: an https address that ends in /office.js
`;

/** Builds dist/ anew: scripts, pane, pages. */
async function build(): Promise<string> {
  const { values } = parsedOptions(process.argv.slice(2), {
    env: { type: 'string' },
    help: { type: 'boolean', default: false },
  });
  if (values.help) return HELP;
  const officeJs = values.env === undefined ? undefined : settingFrom(values.env);
  rmSync(DIST, { recursive: true, force: true });
  const failure = await buildParts(DIST, ['functions', 'pane', 'page'], officeJs);
  if (failure !== undefined) throw new Refusal(1, `dist/ could not be built:\n${failure}`);
  return 'dist/ is built. Next: npm run manifest -- --address https://… (where dist/ will be served)\n';
}

/** Where the library is to be found; refused before anything that stands is taken away. */
function settingFrom(text: string): string {
  const officeJs = /^officeJs=(own|https:\/\/\S+\/office(?:\.debug)?\.js)$/.exec(text)?.[1];
  if (officeJs !== undefined) return officeJs;
  throw new Refusal(2, `--env is ${text}; it can be officeJs=own or officeJs=https://…/office.js`);
}

void runCommand(build);
