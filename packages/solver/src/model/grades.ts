import type { Fastener } from './head-model.ts';

export type Grade = NonNullable<Fastener['grade']>;

/** The weakest of the usual grades: stainless screws are the rule in a test head. */
export const USUAL_GRADE: Grade = 'A2-70';

/**
 * Stress that a screw of the grade bears without a lasting stretch, MPa: proof stress of steel (ISO 898-1), 0.2 % proof
 * stress of stainless steel (ISO 3506-1). Times the stress area it is the proof load.
 */
export const proofStress: Readonly<Record<Grade, number>> = {
  '8.8': 580,
  '10.9': 830,
  '12.9': 970,
  'A2-50': 210,
  'A2-70': 450,
  'A2-80': 600,
  'A4-50': 210,
  'A4-70': 450,
  'A4-80': 600,
};
