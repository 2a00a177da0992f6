import type { HeadModel } from '@flathead/solver';
import { same } from './difference/change.ts';

/** Whether two heads cover the same piece of the plan, as far as their edges say. */
export function sameOutlines(a: HeadModel, b: HeadModel): boolean {
  const edges = ({ body, frame }: HeadModel) => [body.outline, body.openings, frame?.outer, frame?.window];
  return same(edges(a), edges(b));
}
