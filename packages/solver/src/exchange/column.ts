import type { Quantity } from './units.ts';

/** A column that a reader looks for. */
export interface Wanted {
  readonly key: string;
  /** Names that headers give it, in small letters without marks and digits. */
  readonly names: readonly string[];
  /** `null` where it holds words. */
  readonly quantity: Quantity | null;
  readonly required: boolean;
}

export interface FoundColumn {
  /** From 0. */
  readonly index: number;
  /** As the header has it; null without a header. */
  readonly title: string | null;
  /** Unit that the header gives. */
  readonly unit: string | null;
}
