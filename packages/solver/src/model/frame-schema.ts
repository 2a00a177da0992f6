import { z } from 'zod';
import { pointSchema, shapeSchema } from '../geometry/shape.ts';
import { thicknessSchema } from '../section/section.ts';
import { label, positive } from './ranges.ts';

export const rib = z
  .union([
    z.strictObject({
      between: z.enum(['columns', 'rows']).describe('one rib in each gap between neighbouring columns or rows'),
      width: positive(1e3),
      thickness: thicknessSchema.optional().describe('mm; that of the frame if left out'),
      skip: z.array(z.number().int().min(1).max(64)).max(64).optional().describe('gaps without a rib, counted from 1'),
    }),
    z.strictObject({ from: pointSchema, to: pointSchema, width: positive(1e3), thickness: thicknessSchema.optional() }),
  ])
  .meta({ id: 'Rib' });

export const frame = z
  .strictObject({
    outer: shapeSchema,
    window: shapeSchema.describe('opening of the frame around the sites'),
    material: label,
    thickness: thicknessSchema,
    side: z
      .enum(['board', 'device', 'level'])
      .describe('face of the body that carries it; level: let half into either face, mid-planes together'),
    join: z.enum(['bonded', 'sliding', 'bracket']),
    ribs: z.array(rib).max(500).optional(),
  })
  .meta({ id: 'Frame' });
