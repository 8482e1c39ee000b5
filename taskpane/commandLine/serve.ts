import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import sirv from 'sirv';

/** The page as it is served: its address, and how to end it. */
export type Served = { readonly address: string; readonly stop: () => Promise<void> };

const HOST = '127.0.0.1';

/** How many ports above the wanted one are tried before any free one is taken. */
const PORTS_TRIED = 20;

/**
 * The style elements that the grid makes, by what is in them: its messages, its theme, one that starts empty, and what
 * holds the page still under its dialogs, the same on every screen because our body never scrolls.
 */
const GRID_STYLES = [
  "'sha256-StEaX+se6YS7pqjzrzMIA0KaX9zF/8zAhvQXZAe5epY='",
  "'sha256-qehDXQGi+mtaFkbShaHTjtdxRzE9Ba4Ffh5AsXR+z7s='",
  "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='",
  "'sha256-nzTgYzXYDNe6BAHiiI7NNlfK8n/auuOAhh2t92YvuXo='",
];

/**
 * What the page may load and do: its own files from here, and nothing else. Pictures and fonts may also be part of the
 * page's own data, a file to be saved is a blob.
 */
const POLICY = [
  "default-src 'none'",
  // The reader of label symbols is compiled code; this admits that, and no text that is run as a script.
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  `style-src-elem 'self' ${GRID_STYLES.join(' ')}`,
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': POLICY,
  // The grid would read the list of the fonts on this machine; it has no need to know.
  'Permissions-Policy': 'local-fonts=(), geolocation=(), microphone=(), payment=(), usb=()',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/** Serves a folder to this machine alone; a port that is taken gives way to the next one. */
export async function serve(folder: string, wantedPort: number): Promise<Served> {
  const files = sirv(folder, { etag: true, dev: true });
  const server = createServer((request, response) => answerRequest(files, request, response));
  const port = await listening(server, wantedPort, wantedPort === 0 ? 0 : PORTS_TRIED);
  return { address: `http://${HOST}:${port}/`, stop: () => stopped(server) };
}

type Handler = ReturnType<typeof sirv>;

function answerRequest(files: Handler, request: IncomingMessage, response: ServerResponse): void {
  for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
  if (!isForUs(request)) return refuse(response, 403, 'This page answers to 127.0.0.1 only.');
  files(request, response, () => refuse(response, 404, 'There is no such file here.'));
}

/** A foreign name that was made to point here is not ours: the page of another site would read our files through it. */
const isForUs = ({ headers }: IncomingMessage): boolean =>
  /^(127\.0\.0\.1|localhost)(:\d+)?$/.test(headers.host ?? '');

function refuse(response: ServerResponse, status: number, sentence: string): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(sentence);
}

function listening(server: Server, port: number, more: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EADDRINUSE' && error.code !== 'EACCES') return reject(error);
      resolve(listening(server, more > 0 ? port + 1 : 0, more - 1));
    });
    server.listen(port, HOST, () => {
      server.removeAllListeners('error');
      resolve((server.address() as AddressInfo).port);
    });
  });
}

function stopped(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
