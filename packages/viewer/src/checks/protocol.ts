import type { VerificationCase, VerificationRow } from '@flathead/solver/verification';

/** What the page asks of the worker that holds the book. */
export interface ChecksRequest {
  /** `null` = all topics. */
  readonly topic: string | null;
}

/** What it hears: the book first, then each case as it is solved, then the end of the run. */
export type ChecksAnswer =
  | { readonly kind: 'book'; readonly cases: readonly VerificationCase[] }
  | { readonly kind: 'row'; readonly row: VerificationRow }
  | { readonly kind: 'done' }
  | { readonly kind: 'trouble'; readonly message: string };
