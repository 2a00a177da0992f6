import type { LogRecord, Terminal } from './terminal.ts';

export type LogForm = 'text' | 'json';

/**
 * A terminal whose stderr can be changed to JSON Lines, one record each with the time it happened, once the command line
 * has been read.
 */
export function logsOf(screen: Terminal): { readonly terminal: Terminal; choose(form: LogForm): void } {
  let chosen: LogForm = 'text';
  const log = (record: LogRecord): void =>
    screen.err(`${JSON.stringify({ time: new Date().toISOString(), ...record })}\n`);
  const terminal: Terminal = {
    ...screen,
    err: (text) => (chosen === 'json' ? log({ event: 'message', text: text.trim() }) : screen.err(text)),
    get log() {
      return chosen === 'json' ? log : undefined;
    },
  };
  return {
    terminal,
    choose(form) {
      chosen = form;
    },
  };
}
