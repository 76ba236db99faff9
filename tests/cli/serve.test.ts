import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveFolder } from '../../src/cli/serve.ts';

const dir = mkdtempSync(join(tmpdir(), 'serve-test-'));
mkdirSync(join(dir, 'page'));
mkdirSync(join(dir, 'page-of-others'));
writeFileSync(join(dir, 'page', 'index.html'), 'start');
writeFileSync(join(dir, 'page', 'a b.js'), 'script');
for (const place of ['.', 'page-of-others'])
  writeFileSync(join(dir, place, 'secret.txt'), 'secret');

let server: Server;
beforeAll(async () => {
  ({ server } = await serveFolder(join(dir, 'page'), 0));
});
afterAll(() => {
  server.close();
  rmSync(dir, { recursive: true });
});

const portOf = (one: Server): number => {
  const address = one.address();
  return typeof address === 'object' && address ? address.port : 0;
};

/** Status and body; the path goes out as it is, which `fetch` would tidy. */
const ask = (path: string, method = 'GET'): Promise<readonly [number | undefined, string]> =>
  new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port: portOf(server), path, method }, (answer) => {
      let body = '';
      answer.on('data', (data: Buffer) => (body += data.toString()));
      answer.on('end', () => resolve([answer.statusCode, body]));
    });
    asked.on('error', reject);
    asked.end();
  });

describe('the folder that is served', () => {
  it('is served to this machine alone', () => {
    expect(server.address()).toMatchObject({ address: '127.0.0.1' });
  });

  it('is served by its files, and nothing beside it', async () => {
    expect(await ask('/')).toEqual([200, 'start']);
    expect(await ask('/a%20b.js')).toEqual([200, 'script']);
    expect(await ask('/', 'HEAD')).toEqual([200, '']);
    const others = [
      '/../secret.txt',
      '/..%2fsecret.txt',
      '/%2e%2e/secret.txt',
      '/%2e%2e%2fsecret.txt',
    ];
    for (const path of [
      ...others,
      '/../page-of-others/secret.txt',
      '/..%2fpage-of-others%2fsecret.txt',
      '/..%5csecret.txt',
      '/missing.js',
      '/%',
      '//etc/passwd',
    ])
      expect(await ask(path), path).toEqual([404, '']);
    expect(await ask('/', 'POST')).toEqual([404, '']);
  });

  it('goes to another port where its own is taken', async () => {
    const second = await serveFolder(join(dir, 'page'), portOf(server));
    expect(portOf(second.server)).not.toBe(portOf(server));
    expect(second.url).toContain(String(portOf(second.server)));
    second.server.close();
  });
});
