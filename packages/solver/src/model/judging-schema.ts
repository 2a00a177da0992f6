import { z } from 'zod';
import { label, positive } from './ranges.ts';

/* What a head is judged in and by: load cases and limits. */

export const wafer = z
  .strictObject({
    diameter: positive(1e3).describe('of the round wafer, mm'),
    edge: z.number().min(0).max(500).describe('edge exclusion: only dies wholly inside it are tested, mm'),
    centre: z
      .enum(['die', 'corner'])
      .optional()
      .describe('what lies at the centre of the wafer: the middle of a die, or a corner of dies; die if left out'),
  })
  .meta({ id: 'Wafer' });

export const loadCase = z
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

export const limits = z
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
