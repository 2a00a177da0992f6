import type { HeadModel, Point, Rib } from '@flathead/solver';
import { displayRing } from '../buffers/display-ring.ts';
import { onGrid, pointOnGrid } from './grid.ts';
import { LEAVE_LINE, linkedSigns, type MirrorAxes, mirrored, type Signs } from './mirror.ts';
import { clampInside } from './plan-outline.ts';
import { acrossOf, middleOf, ribLines } from './rib-lines.ts';
import type { StageEdit } from './stage-move.ts';

type FreeRib = Extract<Rib, { from: unknown }>;

/** Ends this close to their mirrored places make ribs partners, mm. */
const PARTNER = 0.5;
const NARROWEST = 0.2;

/** Pulls a free rib by its middle or an end, with those opposite where linked; ends stay within the frame. */
export function ribEdit(
  start: HeadModel,
  index: number,
  part: 'whole' | 'from' | 'to',
  axes: MirrorAxes | null,
): StageEdit {
  const ribs = start.frame?.ribs ?? [];
  const held = ribs[index];
  if (held === undefined || !('from' in held) || start.frame === undefined) return (now) => now;
  const outer = displayRing(start.frame.outer);
  const within = (point: Point): Point => (outer === null ? point : clampInside([outer], point, 0.05));
  const centre: Point = start.sites.origin ?? [0, 0];
  const partners: { index: number; signs: Signs; turned: boolean }[] = [];
  // How the rib is its own image: ends swapped, or on the line.
  const own: { signs: Signs; turned: boolean }[] = [];
  for (const signs of linkedSigns(axes))
    ribs.forEach((rib, i) => {
      const turned = 'from' in rib ? imageOf(held, rib, signs, centre) : null;
      if (turned === null) return;
      if (i === index) own.push({ signs, turned });
      else if (partners.every((partner) => partner.index !== i)) partners.push({ index: i, signs, turned });
    });
  const grab = part === 'whole' ? middleOf(held) : held[part];
  /** A rib as a whole leaves its line when it is pulled well off. */
  const stays = (point: Point, axis: 0 | 1): boolean =>
    part !== 'whole' || Math.abs(point[axis] - grab[axis]) < LEAVE_LINE;

  return (now, point, grid) => {
    const free: [boolean, boolean] = [true, true];
    for (const { signs, turned } of own)
      if (part === 'whole' || !turned)
        for (const axis of [0, 1] as const) if (signs[axis] < 0 && stays(point, axis)) free[axis] = false;
    const wanted = pointOnGrid([free[0] ? point[0] : grab[0], free[1] ? point[1] : grab[1]], grid);
    const target: Point = [free[0] ? wanted[0] : grab[0], free[1] ? wanted[1] : grab[1]];
    const moved = moveEnds(held, part, target, within);
    const swap = own.find(({ turned }) => turned);
    if (part !== 'whole' && swap !== undefined)
      moved[part === 'from' ? 'to' : 'from'] = pair(mirrored(moved[part], swap.signs, centre));
    const places = new Map([[index, moved]]);
    for (const partner of partners) {
      const from = pair(mirrored(moved.from, partner.signs, centre));
      const to = pair(mirrored(moved.to, partner.signs, centre));
      places.set(partner.index, partner.turned ? { from: to, to: from } : { from, to });
    }
    return withRibs(now, (rib, i) => {
      const place = places.get(i);
      return place === undefined || !('from' in rib) ? rib : { ...rib, ...place };
    });
  };
}

/** Pulls the edge of a rib: its width is twice the distance of the point from the middle line. */
export function ribWidthEdit(start: HeadModel, index: number): StageEdit {
  const rib = start.frame?.ribs?.[index];
  const line = rib && ribLines(start, rib)[0];
  if (line === undefined) return (now) => now;
  const [nx, ny] = acrossOf(line);
  return (now, point, grid) => {
    const away = Math.abs((point[0] - line.from[0]) * nx + (point[1] - line.from[1]) * ny);
    const width = Math.max(NARROWEST, onGrid(2 * away, grid));
    return withRibs(now, (other, i) => (i === index && other.width !== width ? { ...other, width } : other));
  };
}

function withRibs(model: HeadModel, edit: (rib: Rib, index: number) => Rib): HeadModel {
  const { frame } = model;
  if (frame?.ribs === undefined) return model;
  const ribs = frame.ribs.map(edit);
  const same = ribs.every((rib, i) => rib === frame.ribs?.[i]);
  return same ? model : { ...model, frame: { ...frame, ribs } };
}

function moveEnds(rib: FreeRib, part: 'whole' | 'from' | 'to', target: Point, within: (point: Point) => Point) {
  const ends = { from: rib.from, to: rib.to };
  if (part !== 'whole') return { ...ends, [part]: pair(within(target)) };
  const middle = middleOf(rib);
  let by: Point = [target[0] - middle[0], target[1] - middle[1]];
  // What holds one end back holds the whole rib back.
  for (const end of [rib.from, rib.to]) {
    const [x, y] = within([end[0] + by[0], end[1] + by[1]]);
    by = [x - end[0], y - end[1]];
  }
  return {
    from: pair([rib.from[0] + by[0], rib.from[1] + by[1]]),
    to: pair([rib.to[0] + by[0], rib.to[1] + by[1]]),
  };
}

/** Whether a rib is the mirror image of another with its ends as they are (`false`) or swapped (`true`); `null` = not. */
function imageOf(held: FreeRib, rib: FreeRib, signs: Signs, centre: Point): boolean | null {
  const [from, to] = [mirrored(held.from, signs, centre), mirrored(held.to, signs, centre)];
  if (near(from, rib.from) && near(to, rib.to)) return false;
  return near(from, rib.to) && near(to, rib.from) ? true : null;
}

function near(a: Point, b: Point): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) <= PARTNER;
}

function pair(point: Point): [number, number] {
  return pointOnGrid(point, 0);
}
