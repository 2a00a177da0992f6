import { run } from '../src/program.ts';

export interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line in this process, with what it reads from stdin and whether it thinks it has a screen. */
export async function runHere(
  args: readonly string[],
  { input = '', screen = false }: { readonly input?: string; readonly screen?: boolean } = {},
): Promise<Ended> {
  let [out, err] = ['', ''];
  const code = await run(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    input: chunks(input),
    colour: screen,
    interactive: screen,
  });
  return { code, out, err };
}

async function* chunks(text: string): AsyncGenerator<Uint8Array> {
  const bytes = new TextEncoder().encode(text);
  for (let i = 0; i < bytes.length; i += 65536) yield bytes.subarray(i, i + 65536);
}
