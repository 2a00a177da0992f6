// Serves a folder as a static web site with the headers that let threads share memory: node scripts/serve.mjs FOLDER PORT.
// Needs Node alone. Files whose names hold a hash are kept by browsers for good, all others are asked for anew.
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';

const [folder = 'packages/viewer/dist', port = '8080'] = process.argv.slice(2);
const root = resolve(folder);
const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};

const server = createServer(async (request, response) => {
  response.setHeader('Cross-Origin-Opener-Policy', 'same-origin');
  response.setHeader('Cross-Origin-Embedder-Policy', 'require-corp');
  response.setHeader('X-Content-Type-Options', 'nosniff');
  const refuse = (code, text) => response.writeHead(code, { 'Content-Type': 'text/plain' }).end(`${text}\n`);
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, 'Only GET and HEAD.');
  let path;
  try {
    path = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
  } catch {
    return refuse(400, 'That is no address.');
  }
  const file = resolve(join(root, path.endsWith('/') ? `${path}index.html` : path));
  const found = file.startsWith(root + sep) && !path.includes('\0') ? await stat(file).catch(() => null) : null;
  if (!found?.isFile()) return refuse(404, 'Not found.');
  const kept = /-[\w-]{8,}\.\w+$/.test(file) ? 'public, max-age=31536000, immutable' : 'no-cache';
  response.writeHead(200, {
    'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
    'Content-Length': found.size,
    'Cache-Control': kept,
  });
  if (request.method === 'HEAD') return response.end();
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
});

server.listen(Number(port), () => console.log(`http://localhost:${server.address().port}/`));
// As the first process of a container it gets no default handling of signals.
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => server.close(() => process.exit()).closeAllConnections());
