import { z } from 'zod';
import { judgedFields } from '../judged.ts';
import { settingSchema } from '../parameter.ts';

export const sweepRowSchema = z.strictObject({
  index: z.number().int().min(0),
  settings: z.array(settingSchema).describe('of the parameters, in the order of the plan'),
  ...judgedFields,
});

/** One variant of a sweep. */
export type SweepRow = z.infer<typeof sweepRowSchema>;
