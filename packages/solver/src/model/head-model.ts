import { z } from 'zod';
import { shapeSchema } from '../geometry/shape.ts';
import { thicknessSchema } from '../section/section.ts';
import { frame, type rib } from './frame-schema.ts';
import { fastener, seat } from './holding-schema.ts';
import { limits, loadCase } from './judging-schema.ts';
import { material } from './material-schema.ts';
import { label } from './ranges.ts';
import { type probes, sites } from './sites-schema.ts';

const keepOut = z
  .strictObject({ name: label, shape: shapeSchema, clearance: z.number().min(0).max(1e3).optional() })
  .meta({ id: 'KeepOut' });

/** A multi-site probe head as the engineer writes it. Lengths mm, forces N, stresses MPa, temperatures degC. */
export const headModelSchema = z
  .strictObject({
    $schema: z.string().max(1000).optional(),
    flathead: z.literal(1).describe('format version'),
    name: label,
    note: z.string().max(10000).optional(),
    body: z.strictObject({
      outline: shapeSchema,
      thickness: thicknessSchema,
      material: label,
      openings: z.array(shapeSchema).max(500).optional(),
    }),
    sites,
    frame: frame.optional(),
    fasteners: z.array(fastener).max(500),
    seats: z.array(seat).max(24).optional().describe('pads or lands of the board that the head rests on'),
    keepOuts: z.array(keepOut).max(500).optional(),
    cases: z.array(loadCase).min(1).max(200),
    limits,
    theory: z.enum(['thin', 'shear']).optional().describe('shear if left out'),
    mesh: z
      .union([
        z.strictObject({ size: z.number().min(0.01).max(1e3) }),
        z.strictObject({ tolerance: z.number().min(1e-4).max(0.5) }),
      ])
      .optional()
      .describe(
        'size: of elements, mm; tolerance: refine until the errors of bow and flatness are below this share of their limits; chosen if left out',
      ),
    materials: z.record(label, material).optional().describe('materials of this model, by name; they win over presets'),
  })
  .meta({ id: 'HeadModel', title: 'Flathead head model' });

export type HeadModel = z.infer<typeof headModelSchema>;
export type Material = z.infer<typeof material>;
export type Fastener = z.infer<typeof fastener>;
export type Seat = z.infer<typeof seat>;
export type Frame = z.infer<typeof frame>;
export type Rib = z.infer<typeof rib>;
export type Sites = z.infer<typeof sites>;
export type Probes = z.infer<typeof probes>;
export type LoadCase = z.infer<typeof loadCase>;
export type Limits = z.infer<typeof limits>;
