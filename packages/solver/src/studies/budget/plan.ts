import { z } from 'zod';

const contributor = z
  .strictObject({
    name: z.string().min(1).max(200),
    value: z.number().min(0).max(1e3).optional().describe('magnitude, mm'),
    from: z
      .enum(['bow', 'flatness'])
      .optional()
      .describe('taken from the verdict of the head, worst case, instead of a value'),
    adds: z
      .enum(['systematic', 'independent'])
      .optional()
      .describe(
        'systematic: the same way in every head, added linearly; independent: by root-sum-square; systematic with "from"',
      ),
    note: z.string().max(1000).optional(),
  })
  .meta({ id: 'Contributor' });

/** What uses up the planarity of a head. */
export const budgetPlanSchema = z
  .strictObject({
    limit: z.number().min(1e-6).max(1e3).describe('planarity that the contributors may use up together, mm'),
    contributors: z.array(contributor).min(1).max(200),
  })
  .meta({ id: 'BudgetPlan', title: 'Flathead planarity budget' });

export type BudgetPlan = z.infer<typeof budgetPlanSchema>;
