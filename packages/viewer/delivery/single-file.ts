import { createHash } from 'node:crypto';
import { dirname, join } from 'node:path';
import { build } from 'esbuild';
import type { Plugin } from 'vite';

/** A worker that is started from its address beside the module. */
const WORKER = /new URL\('(\.\/[^']+\.ts)', import\.meta\.url\)(,\s*\{\s*)type: 'module',/g;

/** As for the page of several files, but nothing is fetched: the one script is known by its hash, workers come out of it. */
const policy = (hash: string): string =>
  [
    "default-src 'none'",
    `script-src '${hash}' 'wasm-unsafe-eval'`,
    'worker-src blob:',
    'connect-src data: blob:',
    'img-src data: blob:',
    "style-src 'unsafe-inline'",
    'font-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');

/** Puts script, styles and workers of the built page into one file that opens from disk, without a server. */
export function singleFile(name: string): Plugin[] {
  return [
    {
      name: 'flathead-inline-workers',
      enforce: 'pre',
      async transform(code, id) {
        const [path] = id.split('?');
        const found = [...code.matchAll(WORKER)];
        if (found.length === 0) return null;
        const sources = await Promise.all(found.map(([, file]) => bundled(join(dirname(path), file))));
        // A page from disk has no origin, from which a module worker would have to be loaded: these are plain scripts.
        const started = (_: string, __: string, options: string): string =>
          `URL.createObjectURL(new Blob([${JSON.stringify(sources.shift())}], { type: 'text/javascript' }))${options}`;
        return { code: code.replace(WORKER, started), map: null };
      },
    },
    {
      name: 'flathead-single-file',
      enforce: 'post',
      generateBundle(_, bundle) {
        const files = Object.values(bundle);
        const page = files.find((file) => file.type === 'asset' && file.fileName.endsWith('.html'));
        const scripts = files.filter((file) => file.type === 'chunk');
        const styles = files.filter((file) => file.type === 'asset' && file.fileName.endsWith('.css'));
        if (page?.type !== 'asset' || scripts.length !== 1 || files.length !== 2 + styles.length)
          this.error(`One page, one script and styles are wanted; there are ${files.map(({ fileName }) => fileName)}.`);
        // What would be fetched ahead of a chunk is named after the chunks are made; here there are none.
        const script = scripts[0].code
          .replaceAll('__VITE_PRELOAD__', 'void 0')
          .replaceAll('</script', '<\\/script')
          .replaceAll('<!--', '<\\!--');
        const style = styles.map((file) => String(file.type === 'asset' ? file.source : '')).join('\n');
        const hash = `sha256-${createHash('sha256').update(script).digest('base64')}`;
        // Functions, as `$` means something in a text that is put in.
        const html = String(page.source)
          .replace(/\s*<script[^>]*\ssrc=[^>]*><\/script>/g, '')
          .replace(/\s*<link[^>]*rel="(stylesheet|modulepreload)"[^>]*>/g, '')
          .replace(
            '<head>',
            () => `<head>\n    <meta http-equiv="Content-Security-Policy" content="${policy(hash)}" />`,
          )
          .replace('</head>', () => `<style>${style.replaceAll('</style', '<\\/style')}</style>\n  </head>`)
          .replace('</body>', () => `<script type="module">${script}</script>\n  </body>`);
        for (const file of files) delete bundle[file.fileName];
        this.emitFile({ type: 'asset', fileName: name, source: html });
      },
    },
  ];
}

/** A worker with all it needs in one script. Helpers of its own it starts only where memory is shared, which no file is. */
async function bundled(entry: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    define: { 'import.meta.url': '""', 'import.meta.env.PROD': 'true' },
    write: false,
  });
  return outputFiles[0].text;
}
