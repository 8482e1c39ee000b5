import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser, Page } from 'playwright-core';
import sirv from 'sirv';
import { ROOT } from '../house/sourceFiles.ts';
import { HOST_INFO, hostAnswers, PROGRAMS } from '../excel/hostWindow.ts';
import type { Program } from '../excel/program.ts';
import { startProgram } from '../excel/program.ts';

/** Where the pane is built for the tests, with Microsoft's library in a folder of its own. */
export const BUILT_PANE = `${ROOT}node_modules/.cache/pane`;

/** The policy that docs/install.md gives for Windows and Mac. */
export const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'";

/** Not at the root of its address: an organisation has more to serve than this. */
const FOLDER = '/crankbook/';

/** Serves the built pane as an organisation would: plain files under the policy. */
export async function servePane(
  policy = POLICY,
): Promise<{ readonly address: string; readonly stop: () => void }> {
  const files = sirv(BUILT_PANE, { dev: true });
  const server = createServer((request: IncomingMessage, response: ServerResponse) => {
    response.setHeader('Content-Security-Policy', policy);
    if (!request.url!.startsWith(FOLDER)) return void response.writeHead(404).end();
    request.url = request.url!.slice(FOLDER.length - 1);
    files(request, response, () => void response.writeHead(404).end());
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}${FOLDER}`, stop: () => stop(server) };
}

function stop(server: Server): void {
  server.close();
  server.closeAllConnections();
}

/** The pane's page as Excel for Windows shows it, and the program behind it. */
export type ExcelWindow = {
  readonly page: Page;
  readonly program: Program;
  /** Errors and warnings on the console, faults, and requests that failed. */
  readonly complaints: string[];
  /** Whatever was asked for, in order. */
  readonly requests: string[];
  readonly close: () => Promise<void>;
};

/** Shows the pane's page in front of a workbook with these sheets; `prepare` fills them before. */
export async function openInExcel(
  browser: Browser,
  address: string,
  given: Given = {},
): Promise<ExcelWindow> {
  const { sheets = ['Fleet'], isPaneOpen = true, prepare, colorScheme = 'light', theme, width = 350 } = given;
  const context = await browser.newContext({ viewport: { width, height: 700 }, colorScheme });
  context.setDefaultTimeout(20_000);
  const page = await context.newPage();
  const program = startProgram(sheets, (message) => void page.evaluate(hear, message).catch(() => undefined));
  prepare?.(program);
  await page.exposeFunction('toProgram', (message: string) => void setTimeout(() => program.take(message)));
  const answers = {
    ...hostAnswers(PROGRAMS.current, 'C:\\Fleet.xlsx', isPaneOpen),
    ...(theme && { GetOfficeThemeInfo: JSON.stringify(theme) }),
  };
  await page.addInitScript(pretendExcel, { answers, hostInfo: HOST_INFO });
  const heard = listen(page);
  await page.goto(`${address}taskpane.html`);
  return { page, program, ...heard, close: () => context.close() };
}

type Given = {
  readonly sheets?: readonly string[];
  readonly isPaneOpen?: boolean;
  /** The system's colours, and those of Excel where it tells them, as numbers. */
  readonly colorScheme?: 'light' | 'dark';
  readonly theme?: Readonly<Record<string, number>>;
  readonly width?: number;
  readonly prepare?: (program: Program) => void;
};

function listen(page: Page): Pick<ExcelWindow, 'complaints' | 'requests'> {
  const [complaints, requests]: [string[], string[]] = [[], []];
  page.on('console', (said) => {
    if (['error', 'warning'].includes(said.type())) complaints.push(`${said.type()}: ${said.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`fault: ${error.message}`));
  page.on('requestfailed', (request) => complaints.push(`not answered: ${request.url()}`));
  page.on('request', (request) => requests.push(request.url()));
  return { complaints, requests };
}

type Line = { sendMessageToHost: (text: string) => void; onMessageFromHost?: (text: string) => void };
type ExcelGlobals = { _richApiNativeBridge: Line; toProgram: (text: string) => void };

/** Runs in the page: hands a message of the program to the library. */
function hear(message: string): void {
  (window as unknown as ExcelGlobals)._richApiNativeBridge.onMessageFromHost!(message);
}

/** Runs in the page before anything else: what Excel for Windows puts there. */
function pretendExcel(given: {
  readonly answers: Readonly<Record<string, string | number>>;
  readonly hostInfo: string;
}): void {
  const globals = window as unknown as ExcelGlobals;
  const nothing = (): undefined => undefined;
  const named = Object.entries(given.answers).map(([name, value]) => [name, () => value]);
  const context = { ...Object.fromEntries(named), GetSettings: () => ({ Read: nothing }) };
  const external = {
    GetHostInfo: () => given.hostInfo,
    GetContext: () => context,
    GetLoggingAllowed: () => false,
    Execute: nothing,
    RegisterEvent: nothing,
    UnregisterEvent: nothing,
  };
  Object.defineProperty(window, 'external', { value: external });
  globals._richApiNativeBridge = { sendMessageToHost: (text) => globals.toProgram(text) };
}
