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
}

export type Paint = ReturnType<typeof pc.createColors>;

export function paintFor({ colour }: Terminal): Paint {
  return pc.createColors(colour);
}

/** A line on the screen that says what is being done; nothing where there is no screen. */
export function progress({ err, interactive }: Terminal): {
  readonly step: (name: string) => void;
  readonly done: () => void;
} {
  const write = (text: string): void => {
    if (interactive) err(`\r\x1b[K${text}`);
  };
  return { step: (name) => write(`${name} ...`), done: () => write('') };
}
