import { z } from 'zod';
import { pointSchema, shapeSchema } from '../geometry/shape.ts';
import { label, positive } from './ranges.ts';

/* What holds a head: fasteners and seats. */

const height = z
  .number()
  .min(-10)
  .max(10)
  .optional()
  .describe('of its seat on the board above the nominal plane, mm; only deviations from a plane bend; 0 if left out');

export const fastener = z
  .strictObject({
    name: label,
    at: pointSchema,
    screw: label.optional().describe('size, such as M2.5'),
    bearing: z.number().min(0).max(100).optional().describe('bearing diameter, mm; that of the screw head if left out'),
    stiffness: z
      .union([z.enum(['rigid', 'auto']), z.number().min(1e-3).max(1e12)])
      .optional()
      .describe('N/mm, rigid, or auto: from the screw; auto if left out'),
    acts: z
      .enum(['both', 'pull', 'push'])
      .optional()
      .describe('pull only holds the head back towards the board, push only keeps it off the board; both if left out'),
    grade: z
      .enum(['8.8', '10.9', '12.9', 'A2-50', 'A2-70', 'A2-80', 'A4-50', 'A4-70', 'A4-80'])
      .optional()
      .describe('property class of the screw; A2-70 if left out'),
    engagement: positive(200)
      .optional()
      .describe('engaged thread, mm; if left out long for the stiffness, one diameter for the strength'),
    into: label
      .optional()
      .describe('material that the screw is tapped into; if left out as stiff as the screw, of unknown strength'),
    preload: positive(1e6).optional().describe('clamp force as assembled, N'),
    torque: positive(1e7).optional().describe('tightening torque, N mm, instead of preload'),
    torqueFactor: z
      .number()
      .min(0.05)
      .max(0.6)
      .optional()
      .describe('torque over preload and screw diameter; 0.2 if left out'),
    scatter: z
      .number()
      .min(0)
      .max(0.9)
      .optional()
      .describe('of the preload, as a share of it either way; 0.3 with torque, 0 with preload if left out'),
    height,
  })
  .meta({ id: 'Fastener' });

const bedding = {
  name: label,
  modulus: z.number().min(1e-3).max(1e9).optional().describe('stiffness of each mm2, N/mm3'),
  stiffness: z.number().min(1e-3).max(1e12).optional().describe('of the whole seat, N/mm; instead of modulus'),
  acts: z.literal('push').optional().describe('a seat only pushes the head off the board'),
  height,
};

export const seat = z
  .union([
    z.strictObject({ ...bedding, shape: shapeSchema }),
    z.strictObject({ ...bedding, at: pointSchema, diameter: positive(1e3).describe('mm') }),
  ])
  .meta({ id: 'Seat' });
