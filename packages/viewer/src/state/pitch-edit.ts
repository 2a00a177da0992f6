import { type HeadModel, type Point, sitePitch } from '@flathead/solver';
import { onGrid } from './grid.ts';
import type { StageEdit } from './stage-move.ts';

/** The pitch now, mm; `null` where the model does not say. */
export function pitchOf({ sites }: HeadModel): Point | null {
  try {
    return sitePitch(sites);
  } catch {
    return null;
  }
}

/** Far right corner of the last site of the first row: where the pitch is pulled. `null` where there is one site only. */
export function pitchCorner(model: HeadModel): Point | null {
  const { columns, rows } = model.sites;
  const pitch = pitchOf(model);
  return pitch === null || columns * rows < 2 ? null : cornerAt(model, pitch);
}

/** Where that corner is for a pitch, mm. */
export function cornerAt({ sites }: HeadModel, [px, py]: Point): Point {
  const { columns, rows, origin = [0, 0], probes } = sites;
  return [
    origin[0] + ((columns - 1) / 2) * px + probes.field[0] / 2,
    origin[1] + ((rows - 1) / 2) * py + probes.field[1] / 2,
  ];
}

/** Pulls the sites apart or together by that corner, no closer than probe fields touch; from then on by their pitch. */
export function pitchEdit(start: HeadModel): StageEdit {
  const before = pitchOf(start);
  if (before === null) return (now) => now;
  const { columns, rows, origin = [0, 0], probes } = start.sites;
  const wanted = (axis: 0 | 1, at: number, grid: number): number => {
    const gaps = (axis === 0 ? columns : rows) - 1;
    if (gaps === 0) return onGrid(before[axis], 0);
    const pitch = onGrid((2 * (at - origin[axis] - probes.field[axis] / 2)) / gaps, grid);
    return Math.max(probes.field[axis], pitch);
  };
  return (now, point, grid) => {
    const pitch: [number, number] = [wanted(0, point[0], grid), wanted(1, point[1], grid)];
    const [px, py] = pitchOf(now) ?? before;
    if (pitch[0] === px && pitch[1] === py) return now;
    const { die: _, skip: __, ...bare } = now.sites;
    return { ...now, sites: { ...bare, pitch } };
  };
}
