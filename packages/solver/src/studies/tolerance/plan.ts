import { z } from 'zod';
import { parameterFields } from '../parameter.ts';
import { distributionSchema } from './distribution.ts';

const scatter = z
  .strictObject({
    ...parameterFields,
    distribution: distributionSchema,
    lot: z
      .number()
      .min(0)
      .max(1)
      .optional()
      .describe(
        'of a parameter with several values, which then scatter one by one: share of the variance that those of one head have in common; all move together if left out',
      ),
  })
  .meta({ id: 'Scatter' });

/** How heads scatter, and how many of them are looked at. */
export const tolerancePlanSchema = z
  .strictObject({
    vary: z.array(scatter).min(1).max(50),
    correlations: z
      .array(
        z.strictObject({
          between: z.tuple([z.string().max(1000), z.string().max(1000)]).describe('names of two parameters'),
          rho: z.number().min(-0.999999).max(0.999999).describe('of their normal scores'),
        }),
      )
      .max(1000)
      .optional(),
    samples: z.number().int().min(4).max(100_000).describe('heads; a power of two for a Sobol sequence'),
    seed: z.number().int().min(0).max(4294967295),
    sampling: z.enum(['random', 'sobol']).optional().describe('sobol if left out'),
    indices: z
      .boolean()
      .optional()
      .describe('Sobol indices, which say what matters most; takes as many more heads as there are causes, and two'),
    confidence: z.number().min(0.5).max(0.9999).optional().describe('of every interval; 0.95 if left out'),
    quantiles: z.array(z.number().min(1e-6).max(0.999999)).max(50).optional().describe('0.5, 0.95, 0.99 if left out'),
    errors: z.boolean().optional().describe('estimate the numerical error of every head; takes 2 to 4 times as long'),
  })
  .meta({ id: 'TolerancePlan', title: 'Flathead tolerance study' });

export type TolerancePlan = z.infer<typeof tolerancePlanSchema>;
