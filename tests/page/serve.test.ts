import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, openingCommand } from '../../taskpane/commandLine/openBrowser.ts';
import type { Served } from '../../taskpane/commandLine/serve.ts';
import { serve } from '../../taskpane/commandLine/serve.ts';

const folder = mkdtempSync(join(tmpdir(), 'served-'));
let served: Served;

beforeAll(async () => {
  mkdirSync(join(folder, 'open'));
  writeFileSync(join(folder, 'secret.txt'), 'not for others');
  writeFileSync(join(folder, 'open', 'index.html'), '<!doctype html><title>page</title>');
  served = await serve(join(folder, 'open'), 0);
});
afterAll(async () => {
  await served.stop();
  rmSync(folder, { recursive: true, force: true });
});

type Reply = {
  readonly status: number;
  readonly headers: NodeJS.Dict<string | string[]>;
  readonly text: string;
};

/** Asks as written: `fetch` would tidy the path up and set the host by itself. */
function ask(path: string, headers: Record<string, string> = {}): Promise<Reply> {
  const { hostname, port } = new URL(served.address);
  return new Promise((resolve, reject) => {
    get({ hostname, port, path, headers }, (response) => {
      let text = '';
      response.on('data', (piece) => (text += String(piece)));
      response.on('end', () => resolve({ status: response.statusCode!, headers: response.headers, text }));
    }).on('error', reject);
  });
}

describe('the served page', () => {
  it('is at 127.0.0.1 and comes with its policy, whether it is found or not', async () => {
    expect(served.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    const found = await ask('/');
    expect(found.status).toBe(200);
    expect(found.text).toContain('<title>page</title>');
    const missing = await ask('/nowhere.js');
    expect(missing.status).toBe(404);
    for (const { headers } of [found, missing]) {
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['permissions-policy']).toContain('local-fonts=()');
    }
  });

  it('may run its own scripts and reach its own address, and nothing else', async () => {
    const policy = String((await ask('/')).headers['content-security-policy']);
    const rules = new Map(policy.split('; ').map((rule) => [rule.split(' ')[0], rule]));
    expect(rules.get('default-src')).toBe("default-src 'none'");
    expect(rules.get('script-src')).toBe("script-src 'self' 'wasm-unsafe-eval'");
    expect(rules.get('connect-src')).toBe("connect-src 'self'");
    expect(rules.get('worker-src')).toBe("worker-src 'self'");
    expect(rules.get('frame-ancestors')).toBe("frame-ancestors 'none'");
    expect(rules.get('form-action')).toBe("form-action 'none'");
    expect(rules.get('base-uri')).toBe("base-uri 'none'");
    expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|\*|https?:/);
  });

  it('gives nothing from outside its folder', async () => {
    for (const path of ['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/%5c..%5csecret.txt']) {
      const reply = await ask(path);
      expect([path, reply.status]).toEqual([path, 404]);
      expect(reply.text).not.toContain('not for others');
    }
  });

  it('answers under its own name only', async () => {
    expect((await ask('/', { host: 'example.org' })).status).toBe(403);
    expect((await ask('/', { host: 'localhost:3012' })).status).toBe(200);
  });

  it('takes the next port where the wanted one is taken', async () => {
    const taken = Number(new URL(served.address).port);
    const second = await serve(folder, taken);
    const port = Number(new URL(second.address).port);
    await second.stop();
    expect(port).toBeGreaterThan(taken);
    expect(port).toBeLessThanOrEqual(taken + 20);
  });
});

describe('opening a browser', () => {
  it('uses what the machine has for it', () => {
    const address = 'http://127.0.0.1:3012/';
    expect(openingCommand('linux', address)).toEqual(['xdg-open', [address]]);
    expect(openingCommand('darwin', address)).toEqual(['open', [address]]);
    expect(openingCommand('win32', address)).toEqual(['cmd', ['/c', 'start', '', address]]);
  });

  it('is no matter where there is nothing to open it with', async () => {
    const path = process.env['PATH'];
    process.env['PATH'] = '';
    const faults: unknown[] = [];
    const note = (fault: unknown): number => faults.push(fault);
    process.on('uncaughtException', note);
    openBrowser('http://127.0.0.1:3012/');
    await new Promise((resolve) => setTimeout(resolve, 100));
    process.off('uncaughtException', note);
    process.env['PATH'] = path;
    expect(faults).toEqual([]);
  });
});
