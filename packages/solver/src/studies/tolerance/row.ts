import { z } from 'zod';
import { judgedFields } from '../judged.ts';

export const toleranceRowSchema = z.strictObject({
  index: z.number().int().min(0),
  settings: z
    .array(z.union([z.number(), z.array(z.number())]))
    .describe('of the parameters, in the order of the plan; several of one that scatters value by value'),
  ...judgedFields,
});

/** One head of a tolerance study. */
export type ToleranceRow = z.infer<typeof toleranceRowSchema>;
