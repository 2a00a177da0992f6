import { triangleNeighbours } from '../mesh/adjacency.ts';
import type { CompiledHead } from '../model/compile.ts';
import type { HeadModel, Material } from '../model/head-model.ts';
import { bodyMaterial, frameMaterial, type PartName } from '../model/zones.ts';
import type { PlateProblem } from '../plate/plate-problem.ts';
import type { Section } from '../section/section.ts';
import { type StressLayer, stressLayers } from '../section/stress-layers.ts';
import { sectionsOf } from '../structure/sections.ts';
import type { Structure } from '../structure/structure.ts';
import { type Bearing, bearingOn, coveredBy, discsOver } from './bearing-stress.ts';
import type { CornerGroups } from './corner-groups.ts';
import { type StressPart, stressPart } from './stress-part.ts';
import type { Scatter } from './surface-risk.ts';
import { unitAreaStrength } from './weibull.ts';

/** A part of a head with all that its strength depends on but the load. */
export interface StrengthSetting {
  readonly part: PartName;
  readonly material: string;
  /** Brittle materials break at the largest tension; so are those judged that do not say what they are. */
  readonly brittle: boolean;
  readonly strength: number | null;
  /** `null` where the failure probability is not known. */
  readonly scatter: Scatter | null;
  readonly surface: StressPart;
  readonly bearings: readonly Bearing[];
  /** `[nNodes]` bearing on whose equivalent disc each node lies, or -1. */
  readonly discs: Int16Array;
  /** `[nTriangles]` bearing that covers each triangle, or -1. */
  readonly covered: Int16Array;
}

/**
 * Body and frame of a head on one mesh; all load cases share them.
 *
 * @param problem one of those that were solved on the structure
 * @param groups of the corners of triangles by section
 */
export function strengthSettings(
  model: HeadModel,
  head: CompiledHead,
  problem: PlateProblem,
  structure: Structure,
  groups: CornerGroups,
): StrengthSetting[] {
  const { mesh, section, locator, rigidities, membranes } = structure;
  const sections = sectionsOf(problem);
  const layersOf = (part: PartName): StressLayer[][] =>
    sections.map((own: Section, i) =>
      (stressLayers(own, rigidities[i], membranes?.[i]) ?? []).filter((_, k) => head.plan.sectionParts[i][k] === part),
    );
  const across = triangleNeighbours(mesh);
  return materialsOf(model).map(({ part, name, material }) => {
    const surface = stressPart({ mesh, section, layers: layersOf(part) }, groups, across);
    const bearings = head.fasteners.flatMap(({ at, bearing }, i) => bearingOn(surface, locator, i, at, bearing) ?? []);
    const discs = discsOver(mesh, bearings);
    return {
      part,
      material: name,
      brittle: isBrittle(material),
      strength: material.strength ?? null,
      scatter: scatterOf(material),
      surface,
      bearings,
      discs,
      covered: coveredBy(mesh, discs),
    };
  });
}

export interface PartMaterial {
  readonly part: PartName;
  readonly name: string;
  readonly material: Material;
}

/** Parts of a head and what they are made of. */
export function materialsOf(model: HeadModel): readonly PartMaterial[] {
  const body: PartMaterial = { part: 'body', name: model.body.material, material: bodyMaterial(model) };
  const { frame } = model;
  if (frame === undefined) return [body];
  return [body, { part: 'frame', name: frame.material, material: frameMaterial(model, frame) }];
}

function isBrittle({ kind = 'ceramic' }: Material): boolean {
  return kind === 'ceramic';
}

function scatterOf(material: Material): Scatter | null {
  const { kind, strength, weibull, strengthIs = 'mean' } = material;
  if (kind !== 'ceramic' || strength === undefined || weibull === undefined) return null;
  return { modulus: weibull, strength: unitAreaStrength({ strength, is: strengthIs, modulus: weibull }) };
}
