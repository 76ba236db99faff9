import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { SERVED_POLICY } from './policy.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.ttf': 'font/ttf',
};

/** The file a request path names inside the folder, or nothing when it leaves it. */
const fileFor = (folder: string, url: string): string | undefined => {
  try {
    const path = normalize(decodeURIComponent(new URL(url, 'http://localhost').pathname));
    const file = join(folder, path.endsWith(sep) ? join(path, 'index.html') : path);
    return file.startsWith(folder) && existsSync(file) && statSync(file).isFile()
      ? file
      : undefined;
  } catch {
    return undefined;
  }
};

/** Serves a folder of static files to this machine only; resolves with the address in use. */
export const serveFolder = (
  folder: string,
  port: number,
): Promise<{ readonly url: string; readonly server: Server }> =>
  new Promise((resolve, reject) => {
    const server = createServer((request, response) => {
      const file = fileFor(folder, request.url ?? '/');
      if (!file || (request.method !== 'GET' && request.method !== 'HEAD')) {
        response.writeHead(404).end();
        return;
      }
      response.writeHead(200, {
        'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
        'cache-control': 'no-cache',
        'content-security-policy': SERVED_POLICY,
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
      });
      if (request.method === 'HEAD') response.end();
      else createReadStream(file).pipe(response);
    });
    server.once('error', (error: NodeJS.ErrnoException) => {
      // Taken ports are common on a workshop laptop: let the system pick a free one.
      if (error.code === 'EADDRINUSE' && port !== 0) resolve(serveFolder(folder, 0));
      else reject(error);
    });
    server.listen(port, '127.0.0.1', () => {
      const address = server.address();
      const used = typeof address === 'object' && address ? address.port : port;
      resolve({ url: `http://localhost:${used}/`, server });
    });
  });
