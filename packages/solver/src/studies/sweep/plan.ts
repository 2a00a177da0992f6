import { z } from 'zod';
import { parameterFields, parameterSchema, settingSchema } from '../parameter.ts';

/** Most values of one axis, and most rows of a sweep. */
const MOST_VALUES = 10_000;
export const MOST_ROWS = 1_000_000;

const number = z.number().min(-1e12).max(1e12);

const evenly = z.strictObject({
  from: number,
  to: number,
  count: z.number().int().min(2).max(MOST_VALUES).describe('evenly spaced, both ends among them'),
});

const axis = z
  .strictObject({
    ...parameterFields,
    values: z.union([evenly, z.array(settingSchema).min(1).max(MOST_VALUES)]),
  })
  .meta({ id: 'SweepAxis' });

const common = {
  errors: z.boolean().optional().describe('estimate the numerical error of every variant; takes 2 to 4 times as long'),
  crossings: z
    .boolean()
    .optional()
    .describe('solve for the values that just pass, between rows on either side of a limit; true if left out'),
};

const grid = z.strictObject({ vary: z.array(axis).min(1).max(2), ...common });

const design = z.strictObject({
  design: z.strictObject({
    parameters: z.array(parameterSchema).min(1).max(100),
    rows: z.array(z.array(settingSchema)).min(1).max(100_000).describe('a setting of each parameter in every row'),
  }),
  errors: common.errors,
});

/** One or two parameters over their values, or a design of experiments. */
export const sweepPlanSchema = z.union([grid, design]).meta({ id: 'SweepPlan', title: 'Flathead sweep' });

export type SweepPlan = z.infer<typeof sweepPlanSchema>;
export type SweepAxis = z.infer<typeof axis>;
