import { fileURLToPath } from 'node:url';
import { buildPage } from './buildPage.ts';
import { Refusal, runCommand } from './exit.ts';
import { openBrowser } from './openBrowser.ts';
import { parsedOptions } from './options.ts';
import { serve } from './serve.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const PORT = '3012';

const HELP = `Builds the page and shows it in the browser: a workbook, and the pane beside it.

npm start -- [--port NUMBER] [--no-open]

  --port NUMBER  the port to serve at (${PORT}); where it is taken, the next free one
  --no-open      only print the address
`;

/** Builds the page, serves it to this machine and opens it where there is a browser. */
async function start(): Promise<string> {
  const { values } = parsedOptions(process.argv.slice(2), {
    port: { type: 'string', default: PORT },
    'no-open': { type: 'boolean', default: false },
    help: { type: 'boolean', default: false },
  });
  if (values.help) return HELP;
  const port = portFrom(values.port);
  const started = Date.now();
  const failure = await buildPage(DIST);
  if (failure !== undefined) throw new Refusal(1, `the page could not be built:\n${failure}`);
  const { address } = await serve(DIST, port);
  if (!values['no-open']) openBrowser(address);
  const seconds = ((Date.now() - started) / 1000).toFixed(0);
  return `Crankbook is ready after ${seconds} s: ${address}\nCtrl+C ends it. Nothing leaves this machine.\n`;
}

function portFrom(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new Refusal(2, `--port is ${text}; a port is a whole number from 0 to 65535`);
}

void runCommand(start);
