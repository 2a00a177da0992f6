import type { Choices } from './readings.ts';

/** What each group of choices about a file is given. */
export interface ReadingChoicesProps {
  /** `null` before a file is chosen. */
  readonly content: Uint8Array | null;
  readonly choices: Choices;
  choose(change: Partial<Choices>): void;
}
