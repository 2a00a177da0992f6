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
    modulus: z
      .array(z.tuple([z.number().min(-200).max(500), modulusSchema]))
      .min(1)
      .max(50)
      .optional()
      .describe('E at other temperatures, pairs of degC and MPa; the same at all if left out'),
    density: z.number().min(0.01).max(30).optional().describe('g/cm3'),
    expansion: z.number().min(-1e-4).max(1e-3).optional().describe('1/K'),
    strength: z
      .number()
      .min(0.1)
      .max(1e4)
      .optional()
      .describe('flexural strength (ceramic) or 0.2 % proof stress (metal), MPa'),
    kind: z.enum(['ceramic', 'metal', 'polymer']).optional(),
    strengthIs: z
      .enum(['mean', 'characteristic'])
      .optional()
      .describe(
        'what the flexural strength of a ceramic is: mean of the bars, or 63.2 % of them broken; mean if left out',
      ),
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
    relax: z
      .boolean()
      .optional()
      .describe(
        'whether probes give way as the head bows, so that its load falls by rate times deflection; needs rate',
      ),
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
  })
  .meta({ id: 'Fastener' });

const bedding = {
  name: label,
  modulus: z.number().min(1e-3).max(1e9).optional().describe('stiffness of each mm2, N/mm3'),
  stiffness: z.number().min(1e-3).max(1e12).optional().describe('of the whole seat, N/mm; instead of modulus'),
  acts: z.literal('push').optional().describe('a seat only pushes the head off the board'),
};

const seat = z
  .union([
    z.strictObject({ ...bedding, shape: shapeSchema }),
    z.strictObject({ ...bedding, at: pointSchema, diameter: positive(1e3).describe('mm') }),
  ])
  .meta({ id: 'Seat' });

const keepOut = z
  .strictObject({ name: label, shape: shapeSchema, clearance: z.number().min(0).max(1e3).optional() })
  .meta({ id: 'KeepOut' });

const wafer = z
  .strictObject({
    diameter: positive(1e3).describe('of the round wafer, mm'),
    edge: z.number().min(0).max(500).describe('edge exclusion: only dies wholly inside it are tested, mm'),
    centre: z
      .enum(['die', 'corner'])
      .optional()
      .describe('what lies at the centre of the wafer: the middle of a die, or a corner of dies; die if left out'),
  })
  .meta({ id: 'Wafer' });

const loadCase = z
  .strictObject({
    name: label,
    touched: z
      .union([z.literal('all'), z.array(label).max(4096), z.strictObject({ wafer })])
      .optional()
      .describe(
        'sites touched down, by name such as B3, or every set of them that occurs over a wafer; none if left out',
      ),
    temperature: z.number().min(-200).max(500).optional().describe('uniform temperature, degC'),
    gradient: z.number().min(-500).max(500).optional().describe('through-thickness difference, K'),
  })
  .meta({ id: 'LoadCase' });

const limits = z
  .strictObject({
    bow: positive(10).describe('largest bow of the site area, mm'),
    flatness: positive(10).optional().describe('largest minimum-zone flatness of the site area, mm'),
    contactForce: z.number().min(1e-6).max(100).optional().describe('least force that each probe must keep, N'),
    margin: z
      .number()
      .min(0)
      .max(0.9)
      .optional()
      .describe('share of the limit kept in hand before a pass counts as marginal'),
    strengthFactor: z
      .number()
      .min(1)
      .max(100)
      .optional()
      .describe('least strength over largest stress, of body and frame'),
    failureProbability: z
      .number()
      .min(1e-12)
      .max(0.5)
      .optional()
      .describe('largest probability that a ceramic part breaks in a load case'),
    fastener: z
      .number()
      .min(0.01)
      .max(1)
      .optional()
      .describe('most that a fastener may use of its proof load, of its tapped thread, and of its clamp force'),
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
