import { z } from 'zod';
import { pointSchema, shapeSchema } from '../geometry/shape.ts';
import { expansionSchema, sectionSchema, thicknessSchema } from '../section/section.ts';

const force = z.number().min(-1e9).max(1e9);
const segment = z.strictObject({ from: pointSchema, to: pointSchema }).meta({ id: 'Segment' });
const over = z.union([z.literal('all'), shapeSchema]);

const region = z.strictObject({ shape: shapeSchema, section: sectionSchema });

const edge = z.strictObject({
  along: z.union([z.literal('all'), segment]).describe('the whole boundary, or the part of it on a straight segment'),
  held: z.enum(['simple', 'clamped', 'symmetry']),
});

const support = z.strictObject({
  name: z.string().max(200).optional(),
  at: pointSchema,
  diameter: z.number().min(0).max(1e4).optional().describe('bearing disc over which w is averaged, mm; 0 = a point'),
  over: shapeSchema.optional().describe('area over which w is averaged, instead of a disc about at'),
  stiffness: z.number().min(1e-6).max(1e15).nullable().optional().describe('N/mm; null or left out = rigid'),
  acts: z.enum(['both', 'pull', 'push']).optional().describe('pull only holds back motion along +z'),
  height: z
    .number()
    .min(-1e3)
    .max(1e3)
    .optional()
    .describe('of the seat that it is held to, along +z, mm; 0 if left out'),
});

const load = z.union([
  z.strictObject({ over, force: force.describe('total, N along +z') }),
  z.strictObject({ over, pressure: force.describe('MPa along +z') }),
  z.strictObject({ at: pointSchema, force }),
  z.strictObject({ along: segment, force: force.describe('total, N along +z') }),
  z.strictObject({
    points: z
      .array(z.tuple([z.number().min(-1e5).max(1e5), z.number().min(-1e5).max(1e5), z.number().min(0).optional()]))
      .min(1)
      .max(20000)
      .describe('[x, y] or [x, y, share], mm; alike if no share is given'),
    force: force.describe('total, N along +z'),
  }),
]);

/** A plate, how it is held and loaded, and what to report: the public contract of `flathead plate`. */
export const plateProblemSchema = z
  .strictObject({
    $schema: z.string().max(1000).optional(),
    plate: z.literal(1).describe('format version'),
    name: z.string().max(200).optional(),
    note: z.string().max(10000).optional(),
    outline: shapeSchema,
    openings: z.array(shapeSchema).max(10000).optional(),
    section: sectionSchema,
    regions: z.array(region).max(10000).optional().describe('later regions overwrite earlier ones'),
    edges: z.array(edge).max(1000).optional(),
    supports: z.array(support).max(2000).optional(),
    loads: z.array(load).max(50000).optional(),
    foundations: z
      .array(z.strictObject({ over, modulus: z.number().min(0).max(1e9).describe('N/mm3') }))
      .max(1000)
      .optional(),
    temperature: z
      .strictObject({
        change: z.number().min(-1e4).max(1e4).optional().describe('rise of the middle, K'),
        gradient: z.number().min(-1e4).max(1e4).optional().describe('upper face less lower, K'),
        over: thicknessSchema
          .optional()
          .describe(
            'height that the gradient falls across, about z = 0, mm; the thickness of each section if left out',
          ),
        alpha: expansionSchema.optional().describe('expansion of sections that give none, 1/K'),
      })
      .optional(),
    theory: z.enum(['thin', 'shear']).optional().describe('thin if left out'),
    mesh: z
      .union([
        z.strictObject({ size: z.number().min(1e-4).max(1e5) }),
        z.strictObject({ tolerance: z.number().min(1e-5).max(0.5) }),
      ])
      .optional(),
    report: z.strictObject({ at: z.array(pointSchema).max(20000).optional(), over: shapeSchema.optional() }).optional(),
  })
  .meta({ id: 'PlateProblem', title: 'Flathead plate problem' });

export type PlateProblem = z.infer<typeof plateProblemSchema>;
export type PlateLoad = z.infer<typeof load>;
export type PlateSupport = z.infer<typeof support>;
export type Theory = 'thin' | 'shear';
