import type { PlateProblem } from '@flathead/solver';
import { solvePlate } from '@flathead/solver';
import fc from 'fast-check';
import { pointRow } from '../../packages/solver/src/assembly/rows.ts';
import { dotRow } from '../../packages/solver/src/linear-algebra/sparse-row.ts';
import { advance, type PlateStages } from '../../packages/solver/src/structure/stages.ts';
import { plateProblems } from './plates.ts';

type Supports = NonNullable<PlateProblem['supports']>;
type Section = PlateProblem['section'];

/** A sensible plate. */
function plateOfSeed(seed: number): PlateProblem {
  return fc.sample(fc.noBias(plateProblems), { seed, numRuns: 1 })[0];
}

const request = { areas: [], coarsening: 1, keepMesh: true };

/** The same plate held both ways everywhere, loaded at points: what the energy statements below are about. */
function twoWay({ temperature: _none, ...plate }: PlateProblem): PlateProblem {
  const supports = (plate.supports ?? []).map(({ acts: _both, ...support }) => support);
  const loads = (plate.loads ?? []).filter((load) => 'at' in load);
  const at = supports[0].at;
  const middle: [number, number] = [(at[0] + supports[1].at[0]) / 2 + 0.31, (at[1] + supports[1].at[1]) / 2];
  return { ...plate, supports, loads: loads.length > 0 ? loads : [{ at: middle, force: 50 }] };
}

/** Work of point loads, `f . u`: twice the compliance energy, N mm. */
function energy({ loads = [] }: PlateProblem, { cases: [{ u }], structure: { mesh, locator } }: PlateStages): number {
  return loads.reduce((sum, load) => {
    if (!('at' in load)) throw new Error('point loads only');
    return sum + load.force * dotRow(pointRow(mesh, locator, load.at, 'loads'), u);
  }, 0);
}

/** Energies on one mesh: as it is, and changed. */
function energies(plate: PlateProblem, change: (plate: PlateProblem) => PlateProblem): [number, number] {
  const before = advance(null, { ...request, problems: [plate] });
  const after = advance(null, { ...request, problems: [change(plate)], meshed: before.meshed });
  return [energy(plate, before), energy(plate, after)];
}

/** One more rigid point: a constraint on the same space of deflections, so the energy can only fall. */
export function withOneMoreSupport(seed: number): [before: number, after: number] {
  return energies(twoWay(plateOfSeed(seed)), (plate) => {
    const [a, b] = plate.supports as Supports;
    const at: [number, number] = [0.6 * a.at[0] + 0.4 * b.at[0], 0.6 * a.at[1] + 0.4 * b.at[1]];
    return { ...plate, supports: [...(plate.supports as Supports), { at }] };
  });
}

/**
 * Every modulus 1.7 times as high, supports as they were. The energy `max (2 f u - a(u, u))` can only fall as the form
 * a grows; the bow, which is no energy, may well rise where the supports are elastic.
 */
export function stiffened(seed: number): [before: number, after: number] {
  return energies(twoWay(plateOfSeed(seed)), (plate) => ({
    ...plate,
    section: stiffer(plate.section),
    regions: (plate.regions ?? []).map((region) => ({ ...region, section: stiffer(region.section) })),
  }));
}

function stiffer(section: Section): Section {
  const k = 1.7;
  if ('E' in section) return { ...section, E: k * section.E };
  if ('D' in section) return { ...section, D: k * section.D };
  if ('layers' in section) return { ...section, layers: section.layers.map((layer) => ({ ...layer, E: k * layer.E })) };
  return { Dx: k * section.Dx, Dy: k * section.Dy, D1: k * section.D1, Dxy: k * section.Dxy };
}

/** Largest share by which twice the load misses twice the answer. Holds for one-way supports too, which have no gap. */
export function doubledMisses(seed: number): number {
  const plate = plateOfSeed(seed);
  const twice: PlateProblem = {
    ...plate,
    loads: (plate.loads ?? []).map((load) =>
      'pressure' in load ? { ...load, pressure: 2 * load.pressure } : { ...load, force: 2 * load.force },
    ),
    ...(plate.temperature === undefined
      ? {}
      : { temperature: { ...plate.temperature, gradient: 2 * (plate.temperature.gradient ?? 0) } }),
  };
  const [once, double] = [solvePlate(plate), solvePlate(twice)];
  const answers = (result: typeof once) => [
    result.w.max.value,
    result.w.min.value,
    ...result.w.at,
    ...result.reactions,
  ];
  return largestMiss(
    answers(once).map((v) => 2 * v),
    answers(double),
  );
}

/** Largest miss of the mirrored plate, over what the two meshes are estimated to be off by. */
export function mirroredMisses(seed: number): { readonly miss: number; readonly error: number } {
  const plate = plateOfSeed(seed);
  const [here, there] = [solvePlate(plate), solvePlate(mirrored(plate) as PlateProblem)];
  const size = Math.max(here.w.max.value, -here.w.min.value);
  const miss = Math.max(
    Math.abs(here.w.max.value - there.w.max.value),
    Math.abs(here.w.min.value - there.w.min.value),
    ...here.w.at.map((w, i) => Math.abs(w - there.w.at[i])),
  );
  const error = Math.max(here.error.max, there.error.max, ...here.error.at, ...there.error.at);
  return { miss: miss / size, error: error / size };
}

/** Every point [x, y] becomes [-x, y], and hole rows turn the other way. */
function mirrored(value: unknown, key = ''): unknown {
  if (typeof value === 'number') return key === 'angle' ? -value : value;
  if (Array.isArray(value)) {
    const isSize = key === 'rectangle';
    if (value.length === 2 && value.every((v) => typeof v === 'number') && !isSize) return [-value[0], value[1]];
    return value.map((each) => mirrored(each, key));
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, mirrored(each, name)]));
}

function largestMiss(expected: readonly number[], got: readonly number[]): number {
  const size = Math.max(...expected.map(Math.abs));
  return size === 0 ? Math.max(...got.map(Math.abs)) : Math.max(...expected.map((v, i) => Math.abs(v - got[i]))) / size;
}
