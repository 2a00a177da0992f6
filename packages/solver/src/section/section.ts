import { z } from 'zod';
import { holeArraySchema } from './hole-array.ts';

/** Physical ranges, MPa, mm and N mm: wide enough for any plate, narrow enough to keep 1e300 out of the solver. */
export const modulusSchema = z.number().min(1e-3).max(1e7);
export const poissonSchema = z.number().gt(-1).lt(0.5);
export const thicknessSchema = z.number().min(1e-3).max(1e3);
export const expansionSchema = z.number().min(-1e-2).max(1e-2).describe('thermal expansion, 1/K');
const rigidity = z.number().min(1e-9).max(1e18);

const layer = z
  .strictObject({
    E: modulusSchema.describe("Young's modulus, MPa"),
    nu: poissonSchema.describe("Poisson's ratio"),
    thickness: thicknessSchema.describe('mm'),
    bottom: z.number().min(-1e3).max(1e3).describe('z of the lower face, mm'),
    expansion: expansionSchema.optional(),
  })
  .meta({ id: 'Layer' });

/** Section of a plate: solid, given rigidities, or layers. */
export const sectionSchema = z
  .union([
    z
      .strictObject({
        E: modulusSchema,
        nu: poissonSchema,
        thickness: thicknessSchema,
        expansion: expansionSchema.optional(),
        holes: holeArraySchema.optional().describe('drilled all over; long holes: the plate several pitches thick'),
      })
      .meta({ id: 'SolidSection' }),
    z.strictObject({ D: rigidity, nu: poissonSchema }).meta({ id: 'RigiditySection' }),
    z
      .strictObject({ Dx: rigidity, Dy: rigidity, D1: z.number().min(-1e18).max(1e18), Dxy: rigidity })
      .meta({ id: 'OrthotropicSection' }),
    z
      .strictObject({ layers: z.array(layer).min(1).max(64), join: z.enum(['bonded', 'sliding']) })
      .meta({ id: 'LayeredSection' }),
  ])
  .meta({ id: 'Section' });

export type Section = z.infer<typeof sectionSchema>;
export type Layer = z.infer<typeof layer>;
