import type { Fastener } from '@flathead/solver';
import { screws } from '@flathead/solver';

/** Head of a screw that the model gives no size of: its bearing, or that of a small screw, mm. */
const HEAD = 4;
const SLENDER = 0.55;

/** Diameter and height of the screw's head, mm. The head of a socket screw is as high as the thread is wide. */
export function screwSize({ screw, bearing }: Fastener): { readonly head: number; readonly height: number } {
  const size = screw !== undefined && Object.hasOwn(screws, screw) ? screws[screw] : undefined;
  const head = size?.head ?? bearing ?? HEAD;
  return { head, height: size?.diameter ?? head * SLENDER };
}
