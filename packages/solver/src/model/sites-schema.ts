import { z } from 'zod';
import { pointSchema } from '../geometry/shape.ts';
import { holeArraySchema } from '../section/hole-array.ts';
import { positive } from './ranges.ts';

const skipDies = z.number().int().min(0).max(50);

const offset = z.number().min(-1e3).max(1e3);
const position = z
  .tuple([offset, offset, z.number().min(0).max(100).optional()])
  .describe('[x, y] from the centre of the site, mm, or [x, y, preload] with its own preload, N');
const positions = z.array(position).min(1).max(20000);

const ownSite = z
  .strictObject({
    at: pointSchema.optional().describe('centre of the site, mm; its place in the pattern if left out'),
    field: z
      .tuple([positive(1e3), positive(1e3)])
      .optional()
      .describe('[along x, along y] of its probe field, mm; as of all sites if left out'),
    positions: positions.optional().describe('its probes one by one; as of all sites if left out'),
  })
  .meta({ id: 'OwnSite' });

export const probes = z
  .strictObject({
    count: z.number().int().min(1).max(20000).describe('probes in each site'),
    field: z.tuple([positive(1e3), positive(1e3)]).describe('[along x, along y] of the drilled probe field, mm'),
    preload: z.number().min(0).max(100).describe('board-side preload of one probe, N'),
    touchdown: z.number().min(0).max(100).optional().describe('force of one probe at test height, N'),
    positions: positions
      .optional()
      .describe('probes of a site one by one, which press as point loads; spread evenly over the field if left out'),
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

export const sites = z
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
    own: z
      .record(z.string().min(1).max(20), ownSite)
      .optional()
      .describe('what single sites have of their own, by name such as B3'),
  })
  .meta({ id: 'Sites' });
