import { z } from 'zod';
import { Fault, faultReport } from '../fault/fault.ts';
import type { Verdict } from '../results/head-result.ts';
import { significant } from './significant.ts';

const outcome = z.enum(['pass', 'marginal', 'fail']);

const figure = z.strictObject({
  value: z.number().describe('mm, N, or 1 for a ratio'),
  limit: z.number(),
  bound: z.enum(['most', 'least']).describe('whether the value may be at most or must be at least the limit'),
  unit: z.enum(['mm', 'N', '1']),
  outcome,
  error: z.number().nullable().describe('numerical, estimated; null when it was not'),
  case: z.string(),
  site: z.string(),
});

/** One figure that a variant is judged by. */
export type Figure = z.infer<typeof figure>;

/** What a variant came to: its verdict, or why there is none. */
export const judgedFields = {
  outcome: outcome.optional(),
  figures: z.record(z.string(), figure).optional().describe('by criterion'),
  fault: z.strictObject({ code: z.string(), message: z.string(), path: z.string() }).optional(),
};
const judgedSchema = z.strictObject(judgedFields);
export type Judged = z.infer<typeof judgedSchema>;

/** The figures of a verdict, to nine significant digits. */
export function judgedOf({ outcome, criteria }: Verdict): Judged {
  return {
    outcome,
    figures: Object.fromEntries(
      criteria.map(({ criterion, value, limit, bound, unit, outcome, error, case: name, site }) => [
        criterion,
        {
          value: significant(value),
          limit: significant(limit),
          bound,
          unit,
          outcome,
          error: error === null ? null : significant(error),
          case: name,
          site,
        },
      ]),
    ),
  };
}

/**
 * What `make` gives, or the fault of a variant that can't be built: one bad variant is no reason to stop a study.
 *
 * @throws what is no {@link Fault}
 */
export function orFault<T extends object>(make: () => T): T | Pick<Judged, 'fault'> {
  try {
    return make();
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
    const { code, message, path } = faultReport(thrown);
    return { fault: { code, message, path } };
  }
}

/** How far a figure is beyond its limit, negative inside: zero where it just passes. */
export function beyond({ value, limit, bound }: Pick<Figure, 'value' | 'limit' | 'bound'>): number {
  return bound === 'most' ? value - limit : limit - value;
}
