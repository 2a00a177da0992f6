import { Fault } from '../fault/fault.ts';
import { didYouMean } from '../plate/near-names.ts';

/** A socket head cap screw with coarse thread (fine for #0 and #10). Lengths mm. */
export interface Screw {
  readonly diameter: number;
  readonly pitch: number;
  /** mm2 */
  readonly stressArea: number;
  readonly head: number;
  /** Least diameter of the head's bearing ring. */
  readonly bearing: number;
  /** Through hole, medium fit. */
  readonly hole: number;
  readonly source: string;
}

const METRIC = 'stress area ISO 898-1 (published); head and bearing ISO 4762, hole ISO 273 medium (memory)';
const INCH =
  'stress area ASME B1.1 (published); head ASME B18.3, hole ASME B18.2.8 normal (memory); bearing taken as 0.93 of the head';

type Row = readonly [diameter: number, pitch: number, stressArea: number, head: number, bearing: number, hole: number];

const METRIC_ROWS: Readonly<Record<string, Row>> = {
  'M1.6': [1.6, 0.35, 1.27, 3, 2.74, 1.8],
  M2: [2, 0.4, 2.07, 3.8, 3.48, 2.4],
  'M2.5': [2.5, 0.45, 3.39, 4.5, 4.18, 2.9],
  M3: [3, 0.5, 5.03, 5.5, 5.07, 3.4],
  M4: [4, 0.7, 8.78, 7, 6.53, 4.5],
  M5: [5, 0.8, 14.2, 8.5, 8.03, 5.5],
  M6: [6, 1, 20.1, 10, 9.38, 6.6],
};

const INCH_ROWS: Readonly<Record<string, Row>> = {
  '#0-80': [1.524, 0.3175, 1.16, 2.44, 2.27, 1.93],
  '#2-56': [2.184, 0.4536, 2.39, 3.56, 3.31, 2.59],
  '#4-40': [2.845, 0.635, 3.89, 4.65, 4.32, 3.25],
  '#6-32': [3.505, 0.7938, 5.86, 5.74, 5.34, 3.91],
  '#8-32': [4.166, 0.7938, 9.04, 6.86, 6.38, 4.57],
  '#10-32': [4.826, 0.7938, 12.9, 7.92, 7.37, 5.23],
};

/** Screws by size. */
export const screws: Readonly<Record<string, Screw>> = { ...table(METRIC_ROWS, METRIC), ...table(INCH_ROWS, INCH) };

/**
 * The screw of a size such as `M2.5` or `#4-40`.
 *
 * @throws Fault UNKNOWN_SCREW with all sizes there are
 */
export function findScrew(size: string, path: string): Screw {
  if (Object.hasOwn(screws, size)) return screws[size];
  const known = Object.keys(screws);
  throw new Fault(
    'UNKNOWN_SCREW',
    `There is no screw "${size}".${didYouMean(size, known)} Known are ${known.join(', ')}; for others give "bearing" in mm and "stiffness" in N/mm.`,
    path,
    { value: size, expected: known },
  );
}

function table(rows: Readonly<Record<string, Row>>, source: string): Record<string, Screw> {
  return Object.fromEntries(
    Object.entries(rows).map(([size, [diameter, pitch, stressArea, head, bearing, hole]]) => [
      size,
      { diameter, pitch, stressArea, head, bearing, hole, source },
    ]),
  );
}
