import { difference } from '../geometry/boolean.ts';
import { clipToBox } from '../geometry/box-clip.ts';
import type { Point, Region, Ring } from '../geometry/point.ts';
import { area, type Extent, extent, perimeter, ringArea } from '../geometry/region.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Shape } from '../geometry/shape.ts';
import type { MeshDomain } from '../mesh/domain.ts';
import { type SizeField, sizeField } from '../mesh/size-field.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import { requireFollowable } from './followable.ts';
import { coarsenedCorners, singularCorners } from './singular-corners.ts';

/** A plate problem as the mesher sees it. */
export interface PlateDomain {
  /** Regions of the problem first, in order, then one for each area. */
  readonly mesh: MeshDomain;
  readonly size: SizeField;
  /** Rings of the problem's regions, in order; later ones overwrite earlier ones. */
  readonly regions: readonly Ring[];
  /** Rings whose triangles the results are measured on: site fields, or the reported shape. */
  readonly areas: readonly Ring[];
  readonly plate: Region;
  /** Ring of any shape of the problem, its arcs as fine as the elements. */
  readonly ring: (shape: Shape, path: string) => Ring;
}

/** Element sizes that take the place of those which follow from the problem. */
export interface Grading {
  readonly size: SizeField;
  /** Longest edge of an arc, mm. */
  readonly arc: number;
}

/** Nodes that a plate gets when neither problem nor caller says how fine, and those that it begins with when refined. */
const [NODES, FIRST_NODES] = [5000, 1200];
/** Sagitta of a polygonised arc over the element size. */
const SAGITTA = 0.005;
/** Element size grows by at most this much per unit of distance. */
const GROWTH = 0.25;
/** What lies further off the plate than this share of its extent is cut off: its corners would be nodes of no use. */
const FAR = 1;
/** Point loads up to this many have the mesh graded towards them. */
const FEW_LOADS = 64;

/**
 * Rings and element sizes of a plate problem.
 *
 * @param areas rings that the mesh follows so that results over them are exact, such as probe fields
 * @param coarsening multiplies every element size: 1 as asked, above 1 for a coarser mesh to compare with
 * @param grading element sizes instead of those that follow from the problem
 * @throws Fault BAD_SHAPE with the path of the offending shape
 */
export function plateDomain(
  problem: PlateProblem,
  areas: readonly Ring[],
  coarsening = 1,
  grading?: Grading,
): PlateDomain {
  // The outline is read twice: roughly for its extent, then with arcs as fine as the elements along them.
  const rough = [shapeRing(problem.outline, { chord: extentOf(problem.outline) / 200, path: 'outline' })];
  const base = baseSize(problem, rough);
  const arc = (grading?.arc ?? base) * coarsening;
  const near = grown(extent(rough), FAR);
  const followed = (whole: Ring, path: string): Ring => {
    const part = clipToBox(whole, near);
    // What misses the plate is left to those who can say so.
    if (part.length === 0) return whole;
    requireFollowable(part, base, path);
    return part;
  };
  const ring = (shape: Shape, path: string): Ring =>
    followed(shapeRing(shape, { chord: rise(shape, arc), path }), path);

  const outline = ring(problem.outline, 'outline');
  const openings = (problem.openings ?? []).map((shape, i) => ring(shape, `openings.${i}`));
  const regions = (problem.regions ?? []).map(({ shape }, i) => ring(shape, `regions.${i}.shape`));
  const measured = areas.map((each) => followed(each, problem.report?.over === undefined ? '' : 'report.over'));
  const plate = openings.length === 0 ? [outline] : difference([outline], openings);
  const corners = heldSimply(problem) ? plate.flatMap(singularCorners) : [];
  const sources = [
    ...openings.map((opening) => ({ ring: opening, size: narrowed(opening, base) })),
    ...regions.map((region) => ({ ring: region, size: narrowed(region, base) })),
    ...(problem.supports ?? []).map(({ at, over, diameter = 0 }, i) => ({
      at,
      size: over === undefined ? bearingSize(diameter, base) : areaSize(ring(over, `supports.${i}.over`), base),
    })),
    ...pointLoads(problem).map((at) => ({ at, size: base / 3 })),
    ...corners.map((corner) => ({ at: corner.at, size: base * corner.size })),
  ];
  const asked = grading?.size ?? sizeField({ base, sources, growth: GROWTH });
  return {
    mesh: { outline: plate, regions: [...regions, ...measured] },
    // Coarser everywhere alike, or the two meshes would not be of one family and their difference would say nothing.
    size:
      coarsening === 1
        ? asked
        : coarsenedCorners((x, y) => coarsening * asked(x, y), corners, coarsening, coarsening * base),
    regions,
    areas: measured,
    plate,
    ring,
  };
}

/** A box larger on every side by a share of its longer one. */
function grown({ min, max }: Extent, share: number): Extent {
  const by = share * Math.max(max[0] - min[0], max[1] - min[1]);
  return { min: [min[0] - by, min[1] - by], max: [max[0] + by, max[1] + by] };
}

/** Element size asked for, or one that gives the plate so many nodes: equilateral, 2/sqrt(3) h^-2 a node. */
function baseSize({ mesh }: PlateProblem, outline: Region): number {
  if (mesh !== undefined && 'size' in mesh) return mesh.size;
  const nodes = mesh === undefined ? NODES : FIRST_NODES;
  return Math.sqrt((area(outline) * 2) / (Math.sqrt(3) * nodes));
}

function heldSimply({ edges = [] }: PlateProblem): boolean {
  return edges.some(({ held }) => held === 'simple');
}

function extentOf(shape: Shape): number {
  if ('circle' in shape) return shape.circle;
  if ('rectangle' in shape) return Math.max(...shape.rectangle);
  const { min, max } = extent([shape.polygon]);
  return Math.max(max[0] - min[0], max[1] - min[1], 1e-6);
}

/**
 * Largest rise of an arc above its edges, which are then no longer than the elements: a node between two corners of a
 * polygonised arc that is simply supported would be held along a straight edge, and the plate converge to that of the
 * polygon, too stiff by a quarter (the Babuska paradox). `rise = edge^2 / (8 radius)`.
 */
function rise(shape: Shape, size: number): number {
  return Math.min(SAGITTA * size, size ** 2 / (4 * extentOf(shape)));
}

/** Two elements across the mean width 2A/P of a ring, within a fifth of the base size. */
function narrowed(ring: Ring, base: number): number {
  const width = (2 * Math.abs(ringArea(ring))) / perimeter(ring);
  return Math.min(base, Math.max(width / 2, base / 5));
}

/** Two elements across a bearing; at a point support deflection is finite but its slope is not smooth. */
function bearingSize(diameter: number, base: number): number {
  return diameter > 0 ? Math.min(base, Math.max(diameter / 2, base / 4)) : base / 3;
}

/** One element on an area of support, as wide as its mean width 2A/P doubled. */
function areaSize(ring: Ring, base: number): number {
  const width = (4 * Math.abs(ringArea(ring))) / perimeter(ring);
  return Math.min(base, Math.max(width, base / 4));
}

/** Places of point loads, unless there are so many that together they act as a pressure. */
function pointLoads(problem: PlateProblem): readonly Point[] {
  const points = (problem.loads ?? []).flatMap((load) => ('at' in load ? [load.at] : []));
  return points.length > FEW_LOADS ? [] : points;
}
