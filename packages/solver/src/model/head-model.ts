import { z } from 'zod';
import { pointSchema, shapeSchema } from '../geometry/shape.ts';
import { holeArraySchema } from '../section/hole-array.ts';
import { modulusSchema, poissonSchema, thicknessSchema } from '../section/section.ts';

const label = z.string().min(1).max(200);
const positive = (max: number) => z.number().min(1e-3).max(max);
const skipDies = z.number().int().min(0).max(50);

const material = z
  .strictObject({
    E: modulusSchema.describe("Young's modulus, MPa"),
    nu: poissonSchema.describe("Poisson's ratio"),
    density: z.number().min(0.01).max(30).optional().describe('g/cm3'),
    expansion: z.number().min(-1e-4).max(1e-3).optional().describe('1/K'),
    strength: z
      .number()
      .min(0.1)
      .max(1e4)
      .optional()
      .describe('flexural strength (ceramic) or 0.2 % proof stress (metal), MPa'),
    kind: z.enum(['ceramic', 'metal', 'polymer']).optional(),
    weibull: z.number().min(1).max(100).optional().describe('Weibull modulus'),
    source: z.string().max(500).optional().describe('where the values come from'),
  })
  .meta({ id: 'Material' });

const probes = z
  .strictObject({
    count: z.number().int().min(1).max(20000).describe('probes in each site'),
    field: z.tuple([positive(1e3), positive(1e3)]).describe('[along x, along y] of the drilled probe field, mm'),
    preload: z.number().min(0).max(100).describe('board-side preload of one probe, N'),
    touchdown: z.number().min(0).max(100).optional().describe('force of one probe at test height, N'),
    rate: z.number().min(1e-4).max(1e4).optional().describe('spring rate of one probe, N/mm'),
    kind: z.enum(['floating', 'shouldered']).optional().describe('floating if left out'),
    holes: holeArraySchema
      .optional()
      .describe('array of probe holes over the whole field, which softens it; solid if left out'),
  })
  .meta({ id: 'Probes' });

const sites = z
  .strictObject({
    columns: z.number().int().min(1).max(64),
    rows: z.number().int().min(1).max(64),
    die: z
      .tuple([positive(1e3), positive(1e3)])
      .optional()
      .describe('[along x, along y] with scribe line, mm'),
    skip: z.tuple([skipDies, skipDies]).optional().describe('skipped dies between sites [along x, along y]'),
    pitch: z
      .tuple([positive(1e4), positive(1e4)])
      .optional()
      .describe('site to site [along x, along y], mm; instead of die and skip'),
    origin: pointSchema.optional().describe('centre of the pattern, mm; [0, 0] if left out'),
    probes,
  })
  .meta({ id: 'Sites' });

const rib = z
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

const frame = z
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

const fastener = z
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
  })
  .meta({ id: 'Fastener' });

const keepOut = z
  .strictObject({ name: label, shape: shapeSchema, clearance: z.number().min(0).max(1e3).optional() })
  .meta({ id: 'KeepOut' });

const loadCase = z
  .strictObject({
    name: label,
    touched: z
      .union([z.literal('all'), z.array(label).max(4096)])
      .optional()
      .describe('sites touched down, by name such as B3; none if left out'),
    temperature: z.number().min(-200).max(500).optional().describe('uniform temperature, degC'),
    gradient: z.number().min(-500).max(500).optional().describe('through-thickness difference, K'),
  })
  .meta({ id: 'LoadCase' });

const limits = z
  .strictObject({
    bow: positive(10).describe('largest bow of the site area, mm'),
    flatness: positive(10).optional().describe('largest minimum-zone flatness of the site area, mm'),
    margin: z
      .number()
      .min(0)
      .max(0.9)
      .optional()
      .describe('share of the limit kept in hand before a pass counts as marginal'),
    strengthFactor: z.number().min(1).max(100).optional(),
  })
  .meta({ id: 'Limits' });

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
export type Frame = z.infer<typeof frame>;
export type Rib = z.infer<typeof rib>;
export type Sites = z.infer<typeof sites>;
export type LoadCase = z.infer<typeof loadCase>;
export type Limits = z.infer<typeof limits>;
