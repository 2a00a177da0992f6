import { z } from 'zod';

const length = z.number().min(1e-3).max(1e5);
const coordinate = z.number().min(-1e5).max(1e5);

/** `[x, y]`, mm. */
export const pointSchema = z.tuple([coordinate, coordinate]).meta({ id: 'Point', description: '[x, y] in mm' });

const rectangle = z
  .strictObject({
    rectangle: z.tuple([length, length]).describe('[width along x, height along y], mm'),
    centre: pointSchema.optional().describe('centre, mm; [0, 0] if left out'),
    corner: z.number().min(0).max(1e5).optional().describe('corner radius, mm; 0 if left out'),
  })
  .meta({ id: 'Rectangle' });

const circle = z
  .strictObject({
    circle: length.describe('diameter, mm'),
    centre: pointSchema.optional().describe('centre, mm; [0, 0] if left out'),
  })
  .meta({ id: 'Circle' });

const polygon = z
  .strictObject({
    polygon: z.array(pointSchema).min(3).max(20000).describe('corners in order, either sense, not repeated at the end'),
  })
  .meta({ id: 'Polygon' });

/** A closed shape in the plane of the plate. */
export const shapeSchema = z.union([rectangle, circle, polygon]).meta({ id: 'Shape' });

export type Shape = z.infer<typeof shapeSchema>;
