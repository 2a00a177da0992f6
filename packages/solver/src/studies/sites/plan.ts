import { z } from 'zod';
import { loadCase, wafer } from '../../model/judging-schema.ts';

const count = z.number().int().min(1).max(64);
const skip = z.number().int().min(0).max(50);
const length = z.number().min(1e-3).max(1e3);

const pattern = z
  .strictObject({
    columns: count,
    rows: count,
    skip: z.tuple([skip, skip]).describe('skipped dies between sites [along x, along y]'),
  })
  .meta({ id: 'Pattern' });

/** Site patterns to compare on one head. */
export const sitesPlanSchema = z
  .strictObject({
    patterns: z.array(pattern).min(1).max(1000),
    die: z
      .tuple([length, length])
      .optional()
      .describe('[along x, along y] with scribe line, mm; that of the model if left out'),
    wafer: wafer.describe('that the pattern is stepped over'),
    fit: z
      .enum(['follow', 'keep'])
      .optional()
      .describe(
        'whether outlines, fasteners and keep-outs follow the pattern as it grows or shrinks, or stay; follow if left out',
      ),
    cases: z
      .array(loadCase)
      .min(1)
      .max(200)
      .optional()
      .describe('load cases instead of those of the model, such as ones that name sites which a pattern may not have'),
    errors: z.boolean().optional().describe('estimate the numerical error of every bow'),
  })
  .meta({ id: 'SitesPlan', title: 'Flathead site patterns' });

export type SitesPlan = z.infer<typeof sitesPlanSchema>;
export type Pattern = z.infer<typeof pattern>;
