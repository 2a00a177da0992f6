import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Plugin } from 'vite';

const read = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');

/**
 * What the built page may load and run: its own files alone. Styles are also written by the component library; the kernel
 * of the solver is compiled WebAssembly; pictures are made on the page.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "connect-src 'self' data: blob:",
  "img-src 'self' data: blob:",
  "style-src 'self' 'unsafe-inline'",
  "font-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Builds the page so that it loads nothing from elsewhere and works without a network after its first visit. */
export function delivery(): Plugin[] {
  return [
    {
      name: 'flathead-policy',
      apply: 'build',
      transformIndexHtml: () => [
        { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
      ],
    },
    {
      name: 'flathead-offline',
      apply: 'build',
      enforce: 'post',
      generateBundle(_, bundle) {
        const hash = createHash('sha256').update(read('service-worker.js'));
        const files = Object.keys(bundle).filter((name) => name !== 'service-worker.js');
        for (const name of files.toSorted()) {
          const file = bundle[name];
          hash.update(name).update(file.type === 'chunk' ? file.code : file.source);
        }
        const kept = ['./', ...files.filter((name) => name !== 'index.html')];
        const source = read('service-worker.js')
          .replace("'__FILES__'", JSON.stringify(kept))
          .replace('__VERSION__', hash.digest('hex').slice(0, 16));
        this.emitFile({ type: 'asset', fileName: 'service-worker.js', source });
      },
    },
    {
      name: 'flathead-no-offline',
      apply: 'serve',
      configureServer(server) {
        server.middlewares.use('/service-worker.js', (_, response) => {
          response.setHeader('Content-Type', 'text/javascript');
          response.end(read('no-service-worker.js'));
        });
      },
    },
  ];
}
