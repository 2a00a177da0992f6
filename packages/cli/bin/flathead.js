#!/usr/bin/env node
import { existsSync } from 'node:fs';

const program = new URL('../dist/flathead.js', import.meta.url);
if (existsSync(program)) {
  await import(program.href);
} else {
  console.error('The flathead command is not built yet. Run `npm run build:cli` in its repository.');
  process.exitCode = 3;
}
