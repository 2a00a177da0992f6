import { z } from 'zod';

const bore = z.number().min(1e-3).max(100);

/** A regular array of round holes through a plate, straight or with a wider step at one end. */
export const holeArraySchema = z
  .strictObject({
    pitch: z.number().min(1e-3).max(100).describe('hole to hole, mm'),
    diameter: bore.describe('mm'),
    pattern: z.enum(['square', 'triangular']),
    angle: z
      .number()
      .min(-360)
      .max(360)
      .optional()
      .describe('degrees by which rows of holes are turned from x, counter-clockwise; 0 if left out'),
    counterbore: z
      .strictObject({
        diameter: bore.describe('mm, more than that of the hole'),
        depth: bore.describe('from the face, mm, less than the thickness'),
        side: z.enum(['board', 'device']).describe('board: the lower face, z = -thickness/2; device: the upper'),
      })
      .optional()
      .describe('wider step of every hole at one face'),
  })
  .meta({ id: 'HoleArray' });

export type HoleArray = z.infer<typeof holeArraySchema>;

/** Ligament efficiency: what is left between two holes over their pitch. */
export function ligament({ pitch, diameter }: HoleArray): number {
  return (pitch - diameter) / pitch;
}

/** Area of plate for each hole, mm2. */
export function cellArea({ pitch, pattern }: HoleArray): number {
  return pattern === 'square' ? pitch ** 2 : (Math.sqrt(3) / 2) * pitch ** 2;
}

/** Area of the holes over that of the plate. */
export function holeFraction(holes: HoleArray): number {
  return (Math.PI * holes.diameter ** 2) / 4 / cellArea(holes);
}
