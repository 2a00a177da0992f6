import type { Paths64 } from 'clipper2-ts';
import type { Region } from './point.ts';

/**
 * Grid lines per mm for the integer clipper, a power of ten: 1e10 to 1e11 across the largest coordinate.
 *
 * A decimal grid keeps coordinates typed with a few decimals as they are, and 1e11 squared stays within the clipper's
 * exact arithmetic.
 */
export function decimalGrid(region: Region): number {
  let largest = 0;
  for (const ring of region) for (const [x, y] of ring) largest = Math.max(largest, Math.abs(x), Math.abs(y));
  return largest > 0 ? 10 ** (10 - Math.floor(Math.log10(largest))) : 1;
}

export function toGrid(region: Region, grid: number): Paths64 {
  return region.map((ring) => ring.map(([x, y]) => ({ x: Math.round(x * grid), y: Math.round(y * grid) })));
}

export function fromGrid(paths: Paths64, grid: number): Region {
  return paths.map((path) => path.map(({ x, y }) => [x / grid, y / grid] as const));
}
