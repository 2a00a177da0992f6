#!/usr/bin/env node
import { helper, loadProgram } from './program.js';

const program = loadProgram();
if (program === null) {
  console.error('The flathead command is not built yet. Run `npm run build:cli` in its repository.');
  process.exitCode = 3;
} else {
  process.exitCode = await program.main(process.argv.slice(2), undefined, helper);
}
