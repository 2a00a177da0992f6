import { type Fastener, type HeadModel, type Rib, sitePitch } from '@flathead/solver';
import { pointOnGrid } from './grid.ts';
import { shapeMiddle } from './keep-out-edit.ts';
import { clampInside, planOutlines } from './plan-outline.ts';
import { gapMiddles } from './rib-lines.ts';
import { boxOf } from './shape-box.ts';

/** How far from its original a copy is put, mm. */
const BESIDE = 6;

/** A copy of a fastener beside it, on the head, under the first free name. */
export function withFastenerCopy(model: HeadModel, index: number): HeadModel {
  const like = model.fasteners[index];
  const [x, y] = like.at;
  const outlines = planOutlines(model);
  const free = [
    [-Math.sign(x || 1) * BESIDE, 0],
    [0, -Math.sign(y || 1) * BESIDE],
    [Math.sign(x || 1) * BESIDE, 0],
    [0, Math.sign(y || 1) * BESIDE],
  ]
    .map(([dx, dy]) => pointOnGrid(clampInside(outlines, [x + dx, y + dy], 3), 0))
    .find((at) => model.fasteners.every((other) => Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) > 1));
  const copy: Fastener = { ...like, name: freeName('F', model.fasteners), at: free ?? [x - BESIDE, y - BESIDE] };
  return { ...model, fasteners: [...model.fasteners, copy] };
}

/** A new keep-out of 10 x 6 mm beside the sites, under the first free name. */
export function withNewKeepOut(model: HeadModel): HeadModel {
  const keepOuts = model.keepOuts ?? [];
  const [, height] = boxOf(model.frame?.outer ?? model.body.outline);
  const [ox, oy] = model.sites.origin ?? [0, 0];
  const taken = (x: number, y: number) =>
    keepOuts.some(({ shape }) => Math.hypot(shapeMiddle(shape)[0] - x, shapeMiddle(shape)[1] - y) < 1);
  let [x, y] = [ox, oy - Math.round(height / 2 - 5)];
  while (taken(x, y)) x += 12;
  const added = {
    name: freeName('keep-out ', keepOuts),
    shape: { rectangle: [10, 6], centre: [x, y] },
    clearance: 0.5,
  };
  return { ...model, keepOuts: [...keepOuts, added as NonNullable<HeadModel['keepOuts']>[number]] };
}

export function withKeepOutCopy(model: HeadModel, index: number): HeadModel {
  const keepOuts = model.keepOuts ?? [];
  const like = keepOuts[index];
  const { shape } = like;
  const aside = boxOf(shape)[0] + 2;
  const moved =
    'polygon' in shape
      ? { polygon: shape.polygon.map(([x, y]): [number, number] => [x + aside, y]) }
      : { ...shape, centre: pointOnGrid([shapeMiddle(shape)[0] + aside, shapeMiddle(shape)[1]], 0) };
  return { ...model, keepOuts: [...keepOuts, { ...like, name: freeName('keep-out ', keepOuts), shape: moved }] };
}

export function withoutKeepOut(model: HeadModel, index: number): HeadModel {
  const { keepOuts = [], ...bare } = model;
  const left = keepOuts.filter((_, i) => i !== index);
  return left.length > 0 ? { ...bare, keepOuts: left } : bare;
}

/** A rib of its own across the window, in the first gap between columns, or rows, that has none; needs a frame. */
export function withNewRib(model: HeadModel): HeadModel {
  const { frame, sites } = model;
  if (frame === undefined) return model;
  const { window } = frame;
  const [width, height] = boxOf(window);
  const [cx, cy] = shapeMiddle(window);
  // The ends lie on the frame, a little in from its window.
  const [hx, hy] = [width / 2 + 1, height / 2 + 1];
  const ribs = frame.ribs ?? [];
  const between = sites.columns > 1 || sites.rows === 1 ? 'columns' : 'rows';
  const axis = between === 'columns' ? 0 : 1;
  const gaps = gapMiddles(model, between).toSorted((a, b) => Math.abs(a) - Math.abs(b));
  const has = (at: number) => ribs.some((rib) => 'from' in rib && Math.abs(rib.from[axis] - at) < 0.5);
  let at = gaps.find((middle) => !has(middle)) ?? [cx, cy][axis];
  while (has(at)) at += 3;
  const free = sitePitch(sites)[axis] - sites.probes.field[axis];
  const rib: Rib = {
    from: pointOnGrid(axis === 0 ? [at, cy - hy] : [cx - hx, at], 0),
    to: pointOnGrid(axis === 0 ? [at, cy + hy] : [cx + hx, at], 0),
    width: Math.max(0.5, Math.round(free * 1.2) / 2),
  };
  return { ...model, frame: { ...frame, ribs: [...ribs, rib] } };
}

/** A copy of a rib of its own beside it. */
export function withRibCopy(model: HeadModel, index: number): HeadModel {
  const { frame } = model;
  const rib = frame?.ribs?.[index];
  if (frame === undefined || rib === undefined || !('from' in rib)) return model;
  const [dx, dy] = [rib.to[0] - rib.from[0], rib.to[1] - rib.from[1]];
  const by = (rib.width + 2) / (Math.hypot(dx, dy) || 1);
  const aside = ([x, y]: readonly [number, number]) => pointOnGrid([x + dy * by, y - dx * by], 0);
  return {
    ...model,
    frame: { ...frame, ribs: [...(frame.ribs ?? []), { ...rib, from: aside(rib.from), to: aside(rib.to) }] },
  };
}

export function withoutRib(model: HeadModel, index: number): HeadModel {
  if (model.frame === undefined) return model;
  const { ribs = [], ...bare } = model.frame;
  const left = ribs.filter((_, i) => i !== index);
  return { ...model, frame: left.length > 0 ? { ...bare, ribs: left } : bare };
}

function freeName(stem: string, taken: readonly { readonly name: string }[]): string {
  let i = 1;
  while (taken.some(({ name }) => name === `${stem}${i}`)) i++;
  return `${stem}${i}`;
}
