import { z } from 'zod';
import { modulusSchema, poissonSchema } from '../section/section.ts';

export const material = z
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
