import { z } from 'zod';

/** Name that the engineer gives something. */
export const label = z.string().min(1).max(200);

/** A positive number up to a limit, wide enough for any head. */
export const positive = (max: number) => z.number().min(1e-3).max(max);
