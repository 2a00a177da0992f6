import type { Estimate } from '@flathead/solver';
import { fieldText } from '../format/number.ts';

/** How many heads break a limit, and what that says of all: `All 64 heads break a limit; of all, at least 94.4 % `. */
export function failingWords(
  { value, count, low, high }: Estimate & { readonly count: number },
  heads: number,
  sure: string,
) {
  if (value === 1)
    return `All ${heads} heads break a limit; with ${sure} % confidence at least ${percent(low ?? 0)} of all do.`;
  if (count === 0)
    return `None of ${heads} heads breaks a limit; with ${sure} % confidence at most ${percent(high ?? 1)} of all do.`;
  return `${count} of ${heads} heads break a limit, ${percent(value)}; with ${sure} % confidence ${percent(low ?? 0)} to ${percent(high ?? 1)} of all do.`;
}

/** A capability; none where every head fails: it says how far the limit is from heads that pass. */
export function capabilityWords(capability: Estimate | null, failing: Estimate): string {
  if (failing.value === 1) return 'none, all fail';
  return capability === null ? 'none' : interval(capability, (value) => value.toFixed(2).replace('-', '\u2212'));
}

/** An estimate with its interval. */
export function interval({ value, low, high }: Estimate, text: (value: number) => string): string {
  return `${text(value)} (${low === null ? 'open' : text(low)} to ${high === null ? 'open' : text(high)})`;
}

/** A share with its error, which is never below none nor above all: `66 to 100 %`. */
export function rangeOfShare(value: number, error: number): string {
  const [low, high] = [value - error, value + error].map((end) => Math.round(100 * Math.min(1, Math.max(0, end))));
  return `${low} to ${high}\u00a0%`;
}

export function share(of: number): string {
  return `${Math.round(100 * Math.min(1, Math.max(0, of)))}\u00a0%`;
}

export function percent(share: number): string {
  return `${fieldText(Number((100 * share).toPrecision(3)))}\u00a0%`;
}
