import { Fault } from '../fault/fault.ts';
import { difference, intersection } from '../geometry/boolean.ts';
import { distanceToRing, insideRegion } from '../geometry/inside.ts';
import type { Point, Region, Ring } from '../geometry/point.ts';
import { area, extent } from '../geometry/region.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Shape } from '../geometry/shape.ts';
import type { Section } from '../section/section.ts';
import type { PlateProblem } from './plate-problem.ts';

/** Nodes that an element size may lead to. */
const MOST_NODES = 300_000;
/** Rise of an arc above its edge, over the extent of the plate: points this near an edge may lie on it. */
const SAGITTA = 1e-4;

/**
 * Checks what the schema of a plate problem can't: that its shapes are shapes, that what lies on the plate does, and
 * that nothing is asked for that would be ignored.
 *
 * @throws Fault BAD_SHAPE, OUTSIDE, OVERLAP, TOO_LARGE, SCHEMA or NOT_YET with the path in the problem
 */
export function checkPlateProblem(problem: PlateProblem): void {
  const { outline, openings = [], regions = [], foundations = [], loads = [], report = {} } = problem;
  const rough = shapeRing(outline, { chord: 1, path: 'outline' });
  const { min, max } = extent([rough]);
  const chord = SAGITTA * Math.max(max[0] - min[0], max[1] - min[1]);
  const ring = (shape: Shape, path: string): Ring => shapeRing(shape, { chord, path });
  const whole: Region = [ring(outline, 'outline')];
  const cuts = openings.map((shape, i) => onPlate('opening', whole, ring(shape, `openings.${i}`), `openings.${i}`));
  const plate = cuts.length === 0 ? whole : difference(whole, cuts);
  requireNodes(problem, plate);
  requireShear(problem);

  const patch = (what: string, over: Shape | 'all', path: string): void => {
    if (over !== 'all') onPlate(what, plate, ring(over, path), path);
  };
  regions.forEach(({ shape }, i) => {
    patch('region', shape, `regions.${i}.shape`);
  });
  foundations.forEach(({ over }, i) => {
    patch('foundation', over, `foundations.${i}.over`);
  });
  if (report.over !== undefined) patch('reported area', report.over, 'report.over');
  loads.forEach((load, i) => {
    if ('over' in load) patch('load', load.over, `loads.${i}.over`);
    if ('at' in load) requirePoint('load', load.at, plate, chord, `loads.${i}.at`);
    if ('points' in load) {
      load.points.forEach(([x, y], k) => {
        requirePoint('load', [x, y], plate, chord, `loads.${i}.points.${k}`);
      });
      if (load.points.every(([, , share = 1]) => share === 0))
        throw new Fault('OUT_OF_RANGE', `No point of loads.${i} has a share in its force.`, `loads.${i}.points`);
    }
    if ('along' in load) requireLength(load.along.from, load.along.to, `loads.${i}.along`);
  });
  (problem.supports ?? []).forEach(({ over }, i) => {
    if (over !== undefined) patch('support', over, `supports.${i}.over`);
  });
  (report.at ?? []).forEach((at, i) => {
    requirePoint('reported point', at, plate, chord, `report.at.${i}`);
  });
  requireSupports(problem, plate, chord);
}

function onPlate(what: string, plate: Region, ring: Ring, path: string): Ring {
  if (area(intersection(plate, [ring])) > 1e-9 * area([ring])) return ring;
  throw new Fault('OUTSIDE', `The ${what} of ${path} lies off the plate. Move it onto the plate, or remove it.`, path, {
    expected: 'a shape that overlaps the plate',
  });
}

function requirePoint(what: string, at: Point, plate: Region, tolerance: number, path: string): void {
  const [x, y] = at;
  if (insideRegion(plate, x, y) || plate.some((ring) => distanceToRing(ring, x, y) <= tolerance)) return;
  throw new Fault(
    'OUTSIDE',
    `The ${what} of ${path} at [${x}, ${y}] lies off the plate. Move it onto the plate.`,
    path,
    {
      value: at,
      expected: 'a point on the plate, clear of openings',
    },
  );
}

function requireLength(from: Point, to: Point, path: string): void {
  if (from[0] !== to[0] || from[1] !== to[1]) return;
  throw new Fault('BAD_SHAPE', `The segment of ${path} begins and ends at [${from}]. Move one end.`, path, {
    value: to,
  });
}

function requireSupports({ supports = [] }: PlateProblem, plate: Region, tolerance: number): void {
  const taken = new Map<string, number>();
  supports.forEach(({ at, name, over, diameter }, i) => {
    if (over !== undefined && diameter !== undefined)
      throw new Fault(
        'SCHEMA',
        `Support ${i} has both an area "over" which it bears and a diameter. Give one of them.`,
        `supports.${i}.diameter`,
        { value: diameter },
      );
    requirePoint(name === undefined ? 'support' : `support "${name}"`, at, plate, tolerance, `supports.${i}.at`);
    const other = taken.get(String(at));
    if (other !== undefined)
      throw new Fault(
        'OVERLAP',
        `Supports ${other} and ${i} are both at [${at}]. Remove one, or add their stiffness.`,
        `supports.${i}.at`,
        { value: at },
      );
    taken.set(String(at), i);
  });
}

/** An element size that would take minutes and gigabytes is a slip of the unit. */
function requireNodes({ mesh }: PlateProblem, plate: Region): void {
  if (mesh === undefined || !('size' in mesh)) return;
  const least = Math.sqrt((2 * area(plate)) / (Math.sqrt(3) * MOST_NODES));
  if (mesh.size >= least) return;
  throw new Fault(
    'TOO_LARGE',
    `mesh.size is ${mesh.size} mm, which gives this plate more than ${MOST_NODES} nodes. Use ${least.toPrecision(2)} mm or more, or leave it out.`,
    'mesh.size',
    { value: mesh.size, expected: `${least.toPrecision(2)} or more` },
  );
}

/** Bending rigidities say nothing of shear; to answer with thin theory would hide that. */
function requireShear({ theory, section, regions = [] }: PlateProblem): void {
  if (theory !== 'shear') return;
  const sections: [Section, string][] = [
    [section, 'section'],
    ...regions.map((region, i): [Section, string] => [region.section, `regions.${i}.section`]),
  ];
  const blind = sections.find(([given]) => !('thickness' in given) && !('layers' in given));
  if (blind === undefined) return;
  throw new Fault(
    'SCHEMA',
    `"theory": "shear" needs to know how stiff ${blind[1]} is in shear, which bending rigidities do not say. Give it as E, nu and thickness or as layers, or use "theory": "thin".`,
    blind[1],
    { expected: 'E, nu and thickness, or layers' },
  );
}
