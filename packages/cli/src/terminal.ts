import pc from 'picocolors';

/** Where a command reads and writes. The process's own streams, or a test's. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly input: AsyncIterable<Uint8Array>;
  /** Whether what goes to `out` may be coloured. */
  readonly colour: boolean;
  /** Whether `err` is a screen that a progress line can be rewritten on. */
  readonly interactive: boolean;
  /** File that helper threads of a study run; without one a study runs on the thread of the command. */
  readonly helper?: string | undefined;
  /** Where records of what happens go, one a line, instead of words; undefined unless they are asked for. */
  readonly log?: ((record: LogRecord) => void) | undefined;
}

/** Something that happened: `step`, `message`, `refused` or `end`, with what belongs to it. */
export interface LogRecord {
  readonly event: 'step' | 'message' | 'refused' | 'end';
  readonly [fact: string]: unknown;
}

export type Paint = ReturnType<typeof pc.createColors>;

export function paintFor({ colour }: Terminal): Paint {
  return pc.createColors(colour);
}

/** A line on the screen that says what is being done, or a record of it; nothing where there is neither. */
export function progress({ err, interactive, log }: Terminal): {
  readonly step: (name: string, facts?: Readonly<Record<string, unknown>>) => void;
  readonly done: () => void;
} {
  if (log !== undefined) return { step: (name, facts) => log({ event: 'step', step: name, ...facts }), done: () => {} };
  const write = (text: string): void => {
    if (interactive) err(`\r\x1b[K${text}`);
  };
  return { step: (name) => write(`${name} ...`), done: () => write('') };
}
