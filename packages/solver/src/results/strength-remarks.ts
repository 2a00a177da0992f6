import type { HeadModel } from '../model/head-model.ts';
import { materialsOf, type PartMaterial } from './strength-setting.ts';

/** What a strength limit asks of the materials and they do not give, one sentence each. */
export function strengthRemarks(model: HeadModel): string[] {
  const { strengthFactor, failureProbability } = model.limits;
  const parts = materialsOf(model);
  if (strengthFactor === undefined && failureProbability === undefined) return [];
  const notCeramic = ({ material: { kind } }: PartMaterial) => kind !== undefined && kind !== 'ceramic';
  return [
    ...parts.flatMap(unknownStrength),
    ...(strengthFactor === undefined ? [] : parts.flatMap(unknownKind)),
    ...(failureProbability === undefined ? [] : parts.flatMap(unknownScatter)),
    ...(failureProbability !== undefined && parts.every(notCeramic)
      ? ['No failure probability is judged: neither body nor frame is ceramic.']
      : []),
  ];
}

function unknownStrength({ part, name, material }: PartMaterial): string[] {
  if (material.strength !== undefined) return [];
  return [
    `The strength of the ${part} is not judged: material "${name}" gives none. Add it under "materials" with its "strength".`,
  ];
}

function unknownKind({ part, name, material: { kind, strength } }: PartMaterial): string[] {
  if (kind !== undefined || strength === undefined) return [];
  return [`Material "${name}" does not say its "kind"; the ${part} is judged as brittle, by its largest tension.`];
}

function unknownScatter({ part, name, material: { kind, strength, weibull } }: PartMaterial): string[] {
  if (strength === undefined || (kind !== undefined && (kind !== 'ceramic' || weibull !== undefined))) return [];
  const missing = kind === undefined ? '"kind"' : '"weibull" modulus';
  return [`The failure probability of the ${part} is not judged: material "${name}" gives no ${missing}.`];
}
