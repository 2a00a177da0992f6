/*
 * The drag frames of drag.ts in a worker of Chromium, one thread.
 *
 *   node benchmarks/drag-in-browser.mjs 30,100
 *
 * Not covered: drawing; other browsers.
 */
import { argv, stdout } from 'node:process';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';

const bundle = await build({
  stdin: {
    contents: `
      import { dragTimes } from './drag-frames.ts';
      self.onmessage = ({ data }) => self.postMessage(dragTimes(data, { crew: null }));
    `,
    resolveDir: fileURLToPath(new URL('.', import.meta.url)),
    loader: 'ts',
  },
  bundle: true,
  minify: true,
  write: false,
});
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
try {
  const page = await browser.newPage();
  for (const kdof of (argv[2] ?? '30,100').split(',').map(Number)) {
    const times = await page.evaluate(
      ([source, dofs]) =>
        new Promise((resolve, reject) => {
          const worker = new Worker(URL.createObjectURL(new Blob([source], { type: 'text/javascript' })));
          worker.onmessage = ({ data }) => resolve(data);
          worker.onerror = ({ message }) => reject(new Error(message));
          worker.postMessage(dofs);
        }),
      [bundle.outputFiles[0].text, 1000 * kdof],
    );
    stdout.write(`${JSON.stringify({ browser: browser.version(), ...times })}\n`);
  }
} finally {
  await browser.close();
}
