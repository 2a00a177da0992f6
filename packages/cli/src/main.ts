import { run } from './program.ts';

// A reader that has seen enough, such as `head`, closes the pipe: no reason to complain.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  input: process.stdin,
  colour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined && process.env.TERM !== 'dumb',
  interactive: process.stderr.isTTY === true,
});
