import { Fault } from '../fault/fault.ts';
import { areaCells } from '../geometry/area-cells.ts';
import { difference, intersection } from '../geometry/boolean.ts';
import type { Point, Region, Ring } from '../geometry/point.ts';
import { area, centroid } from '../geometry/region.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Site } from '../layout/site.ts';
import type { PlateSupport } from '../plate/plate-problem.ts';
import type { HeadModel, Seat } from './head-model.ts';
import type { HeadParts } from './parts.ts';
import { polygon } from './zones.ts';

/** A part of a seat that bears or lifts off as one. */
export interface SeatCell {
  /** Its centre of area. */
  readonly at: Point;
  readonly ring: Ring;
  /** mm2 */
  readonly area: number;
}

/** A pad or land of the board that the head rests on, cut into cells. */
export interface PlacedSeat {
  readonly name: string;
  /** Bedding modulus, N/mm3. */
  readonly modulus: number;
  readonly cells: readonly SeatCell[];
}

/** Cells that a compact seat is cut into. */
const CELLS = 9;
/** Share of a seat that may reach beyond the head or over another part: the rise of arcs above their edges. */
const ROUNDING = 1e-3;

/**
 * Seats in cells, each of which acts one way: it pushes the head off the board, and never pulls. A seat is level with
 * the board faces of the fasteners, so that it bears from the first micrometre. What lies under a screw head is part of
 * that fastener's clamped stack and needs no seat.
 *
 * @param fields rings of the probe fields, in the order of the sites
 * @param chord largest rise of an arc above its edge, mm
 * @throws Fault SCHEMA, BAD_SHAPE, OUTSIDE or OVERLAP with the path in the model
 */
export function placeSeats(
  { seats = [] }: HeadModel,
  parts: HeadParts,
  sites: readonly Site[],
  fields: readonly Ring[],
  chord: number,
): PlacedSeat[] {
  const rings = seats.map((seat, i) => ringOf(seat, `seats.${i}`, chord));
  return seats.map((seat, i) => {
    const path = `seats.${i}.${'shape' in seat ? 'shape' : 'at'}`;
    const region = onHead(seat, rings[i], parts, path);
    requireClearOfSites(seat, region, sites, fields, path);
    const other = rings.findIndex((ring, j) => j < i && overlap(region, ring));
    if (other >= 0)
      throw overlapFault(`Seats ${seats[other].name} and ${seat.name} overlap. Move one, or join them.`, path);
    const cells = areaCells(region, CELLS).map((ring) => ({ at: centroid([ring]), ring, area: area([ring]) }));
    return { name: seat.name, modulus: modulusOf(seat, area(region), `seats.${i}`), cells };
  });
}

/** The supports that stand for the cells of the seats, in order. */
export function seatSupports(seats: readonly PlacedSeat[]): PlateSupport[] {
  return seats.flatMap(({ name, modulus, cells }) =>
    cells.map(({ at: [x, y], ring, area }) => ({
      name,
      at: [x, y] as [number, number],
      over: polygon(ring),
      stiffness: modulus * area,
      acts: 'push' as const,
    })),
  );
}

function ringOf(seat: Seat, path: string, chord: number): Ring {
  if ('shape' in seat) return shapeRing(seat.shape, { chord, path: `${path}.shape` });
  return shapeRing({ circle: seat.diameter, centre: seat.at }, { chord, path: `${path}.diameter` });
}

function modulusOf({ name, modulus, stiffness }: Seat, area: number, path: string): number {
  if (modulus !== undefined && stiffness === undefined) return modulus;
  if (stiffness !== undefined && modulus === undefined) return stiffness / area;
  const both = modulus !== undefined;
  throw new Fault(
    'SCHEMA',
    `Seat ${name} has ${both ? 'both a modulus and a stiffness' : 'neither a modulus nor a stiffness'}. Give one: "modulus" in N/mm3, or "stiffness" of the whole seat in N/mm.`,
    both ? `${path}.stiffness` : path,
    { expected: 'modulus or stiffness' },
  );
}

function onHead({ name }: Seat, ring: Ring, { plate }: HeadParts, path: string): Region {
  const beyond = area(difference([ring], plate)) / area([ring]);
  if (beyond <= ROUNDING) return intersection([ring], plate);
  const share =
    beyond > 1 - ROUNDING
      ? 'lies off the head'
      : `reaches off the head with ${(100 * beyond).toFixed(1)} % of its area`;
  throw new Fault('OUTSIDE', `Seat ${name} ${share}. Keep it on the body or the frame, clear of openings.`, path, {
    expected: 'a seat on the body or the frame',
    beyond,
  });
}

function requireClearOfSites(
  { name }: Seat,
  region: Region,
  sites: readonly Site[],
  fields: readonly Ring[],
  path: string,
): void {
  const hit = fields.findIndex((field) => overlap(region, field));
  if (hit >= 0)
    throw overlapFault(`Seat ${name} covers part of the probe field of site ${sites[hit].name}. Move it away.`, path);
}

function overlap(region: Region, ring: Ring): boolean {
  return area(intersection(region, [ring])) > ROUNDING * Math.min(area(region), area([ring]));
}

function overlapFault(message: string, path: string): Fault {
  return new Fault('OVERLAP', message, path);
}
