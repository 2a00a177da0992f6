import { Fault } from '../fault/fault.ts';
import type { Fastener, HeadModel, Material } from './head-model.ts';
import { findMaterial } from './materials.ts';

/** What a screw is tapped into: a stiffener of the board, or an insert. */
export interface TappedPart {
  /** MPa */
  readonly E: number;
  /** 0.2 % proof stress, MPa; `null` when nobody knows. */
  readonly strength: number | null;
}

/**
 * Least 0.2 % proof stress of presets in their softest usual condition, MPa. From memory of EN 10088-3 (304, 316),
 * ASTM A564 (17-4PH H1150), ASTM B265 (titanium), EN 485-2 (aluminium T6, T73), data sheets of the annealed state
 * (others). A `strength` in the model wins.
 */
const SOFTEST: Readonly<Record<string, number>> = {
  'stainless-304': 190,
  'stainless-316': 200,
  'stainless-17-4': 725,
  'stainless-420': 345,
  'tool-steel': 380,
  'nickel-iron-36': 240,
  'nickel-cobalt-iron': 275,
  'titanium-6al-4v': 828,
  'aluminium-6061': 240,
  'aluminium-7075': 360,
};

/**
 * The part that a fastener is tapped into; `null` where the model does not say: as stiff as the screw, of unknown
 * strength.
 *
 * @throws Fault UNKNOWN_MATERIAL; SCHEMA for a ceramic, which bears no thread
 */
export function tappedPart(model: Pick<HeadModel, 'materials'>, { name, into }: Fastener, path: string) {
  if (into === undefined) return null;
  const material = findMaterial(model, into, `${path}.into`);
  if (material.kind === 'ceramic')
    throw new Fault(
      'SCHEMA',
      `Fastener ${name} is tapped into "${into}", a ceramic, which bears no thread. Give the metal of its insert or of the board's stiffener.`,
      `${path}.into`,
      { value: into, expected: 'a metal or a polymer' },
    );
  return { E: material.E, strength: strengthOf(model, into, material) } satisfies TappedPart;
}

function strengthOf({ materials = {} }: Pick<HeadModel, 'materials'>, name: string, { strength }: Material) {
  if (strength !== undefined) return strength;
  return Object.hasOwn(materials, name) || !Object.hasOwn(SOFTEST, name) ? null : SOFTEST[name];
}
