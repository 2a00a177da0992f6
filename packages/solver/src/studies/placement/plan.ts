import { z } from 'zod';
import { Fault } from '../../fault/fault.ts';
import { pointSchema } from '../../geometry/shape.ts';
import { label } from '../../model/ranges.ts';
import { checkSchema } from '../../plate/check-schema.ts';
import { readJson } from '../../plate/read-json.ts';

const mirror = z
  .enum(['none', 'x', 'y', 'both'])
  .describe('x: a fastener at (x, y) has a partner at (-x, y), about "about"; both: one at each of the four images');
const through = z
  .enum(['frame', 'body', 'either'])
  .describe(
    'part that screws go through, with their whole bearing on it: the frame alone, off the body; the body, whether or not the frame lies under it; or either',
  );
const count = z.number().int().min(1).max(60);

/** What a placement search may move, where to, and what for. */
export const placementPlanSchema = z
  .strictObject({
    count: count.optional().describe('fasteners in all, fixed ones included; as many as the model has if left out'),
    mirror: mirror.optional().describe('of all that are placed; none if left out'),
    groups: z
      .array(z.strictObject({ count, mirror: mirror.optional() }))
      .min(1)
      .max(8)
      .optional()
      .describe('fasteners to place, by how they are mirrored; instead of count and mirror'),
    fixed: z.array(label).max(60).optional().describe('fasteners of the model that stay where they are, by name'),
    like: label
      .optional()
      .describe('fastener of the model that those placed are like; the first not fixed if left out'),
    about: pointSchema.optional().describe('centre of the mirrors and of the grid, mm; [0, 0] if left out'),
    clearance: z
      .number()
      .min(0)
      .max(1e3)
      .optional()
      .describe('between the heads of fasteners and the probe fields, mm; 0 if left out'),
    edge: z
      .number()
      .min(0)
      .max(1e3)
      .optional()
      .describe(
        'between the heads of fasteners and edges of the part they go through, openings included, mm; 0 if left out',
      ),
    through: through
      .optional()
      .describe(
        'part that screws go through; the frame if there is one that has room for all of them with the spacing, else either',
      ),
    spacing: z
      .number()
      .min(0)
      .max(1e4)
      .optional()
      .describe('least distance between the axes of fasteners, mm; that at which their heads touch if less'),
    step: z.number().min(0.01).max(1e3).optional().describe('of the grid of positions, mm; chosen if left out'),
    continuous: z
      .boolean()
      .optional()
      .describe('whether the best of the grid is moved off it; true without a step, false with one, if left out'),
    objective: z
      .enum(['bow', 'flatness', 'share'])
      .optional()
      .describe(
        'made small, over all load cases; share: the larger of bow and flatness over their limits; bow if left out',
      ),
    weights: z
      .strictObject({ bow: z.number().min(0).max(1e3), flatness: z.number().min(0).max(1e3) })
      .optional()
      .describe('of the shares of both limits; 1 each if left out'),
    seed: z.number().int().min(0).max(4294967295).optional().describe('of the starts; 1 if left out'),
    starts: z.number().int().min(1).max(1000).optional().describe('of a search; 12 if left out'),
    most: z
      .number()
      .int()
      .min(0)
      .max(1e8)
      .optional()
      .describe('placements up to which all are tried rather than searched; 300000 if left out'),
    curve: z
      .strictObject({
        over: z.enum(['clearance', 'count']),
        values: z.array(z.number().min(0).max(1e3)).min(1).max(60).optional().describe('chosen if left out'),
      })
      .optional()
      .describe('the best placement for each of several clearances to the sites, mm, or numbers of fasteners'),
  })
  .meta({ id: 'PlacementPlan', title: 'Flathead placement plan' });

export type PlacementPlan = z.infer<typeof placementPlanSchema>;

export type Through = z.infer<typeof through>;

export type Mirror = z.infer<typeof mirror>;

/** Fasteners to place that are mirrored alike. */
export interface GroupPlan {
  readonly count: number;
  readonly mirror: Mirror;
}

/**
 * Placement plan of data that is already parsed.
 *
 * @throws Fault with the path of the first thing wrong
 */
export function checkPlacementPlan(value: unknown): PlacementPlan {
  const plan = checkSchema(placementPlanSchema, value, 'placement plan');
  const both = (['count', 'mirror'] as const).find((key) => plan.groups !== undefined && plan[key] !== undefined);
  if (both !== undefined)
    throw new Fault(
      'SCHEMA',
      `The placement plan has both "groups" and "${both}". Give "groups" alone, each with its own count and mirror.`,
      both,
      { value: plan[both] },
    );
  if (plan.groups !== undefined && plan.curve?.over === 'count')
    throw new Fault(
      'SCHEMA',
      'A curve over the count changes "count", which "groups" takes the place of. Give "mirror" instead of "groups".',
      'groups',
    );
  return plan;
}

/**
 * Placement plan of a JSON text.
 *
 * @param over keys that win over those of the text
 * @throws Fault that says where the text or a value is wrong
 */
export function readPlacementPlan(text: string, over: Readonly<Record<string, unknown>> = {}): PlacementPlan {
  const value = readJson(text);
  const isObject = typeof value === 'object' && value !== null && !Array.isArray(value);
  return checkPlacementPlan(isObject ? { ...value, ...over } : value);
}
