import type { Point } from '../geometry/point.ts';
import type { CompiledHead } from '../model/compile.ts';
import type { BearingFace } from './bearing-stress.ts';
import type { PartStrength } from './head-result.ts';
import { firstPrincipal, secondPrincipal } from './plane-stress.ts';
import type { StrengthSetting } from './strength-setting.ts';
import { equivalent, tension } from './stress-measure.ts';
import { areaOf, type Scatter, surfaceRisk } from './surface-risk.ts';

/** Factors above this say no more than that there is next to no stress. */
const MOST_FACTOR = 1e6;

const SIDE = ['board', 'device'] as const;

type Largest = Pick<PartStrength, 'stress' | 'gross' | 'at' | 'face' | 'fastener'>;

/**
 * Largest stress of a part, its strength factor and failure probability in one load case.
 *
 * @param stress from `faceStresses`
 * @param pressed faces under each bearing of the part
 */
export function partStrength(
  setting: StrengthSetting,
  stress: Float64Array,
  pressed: readonly (readonly BearingFace[])[],
  head: CompiledHead,
): PartStrength {
  const { part, material, brittle, strength, scatter, surface, covered } = setting;
  const under = underBearings(setting, pressed, head);
  const worst = [...largestAway(setting, stress), ...under].reduce((a, b) => (b.stress > a.stress ? b : a));
  const risk = (own: Scatter) => surfaceRisk(surface, stress, own, covered) + bearingRisk(setting, pressed, own);
  return {
    part,
    material,
    measure: brittle ? 'principal' : 'von Mises',
    ...worst,
    near: worst.fastener ?? nearestSite(head, worst.at),
    strength,
    factor: strength === null ? null : Math.min(MOST_FACTOR, strength / Math.max(0, worst.stress)),
    failureProbability: scatter === null ? null : -Math.expm1(-risk(scatter)),
  };
}

/** The largest stress at the nodes that no bearing covers; none when all are covered. */
function largestAway({ brittle, surface, discs }: StrengthSetting, stress: Float64Array): Largest[] {
  const measure = brittle ? tension : equivalent;
  const { mesh, places } = surface;
  let most = Number.NEGATIVE_INFINITY;
  let found = -1;
  for (let p = 0; p < 2 * places.corner.length; p++) {
    if (discs[mesh.triangles[places.corner[p >> 1]]] >= 0) continue;
    const value = measure(stress, 3 * p, places.layer[p >> 1].holes);
    if (value <= most) continue;
    most = value;
    found = p;
  }
  if (found < 0) return [];
  const node = mesh.triangles[places.corner[found >> 1]];
  return [
    {
      stress: most,
      gross: measure(stress, 3 * found, null),
      at: [mesh.x[node], mesh.y[node]],
      face: SIDE[found % 2],
      fastener: null,
    },
  ];
}

function underBearings(
  { brittle, bearings }: StrengthSetting,
  pressed: readonly (readonly BearingFace[])[],
  head: CompiledHead,
): Largest[] {
  const measure = brittle ? tension : equivalent;
  return bearings.flatMap(({ fastener, at }, i) =>
    pressed[i].map(({ stress, face }) => {
      const value = measure(stress, 0, null);
      return { stress: value, gross: value, at, face: SIDE[face], fastener: head.fasteners[fastener].name };
    }),
  );
}

/** Risk of the triangles that bearings cover, each under the stress in the middle of its bearing. */
function bearingRisk(
  { surface: { mesh, placeAt }, covered }: StrengthSetting,
  pressed: readonly (readonly BearingFace[])[],
  { modulus, strength }: Scatter,
): number {
  const share = (stress: number) => Math.max(0, stress / strength) ** modulus;
  const perArea = pressed.map((faces) =>
    faces.reduce((sum, { stress }) => sum + share(firstPrincipal(stress)) + share(secondPrincipal(stress)), 0),
  );
  let risk = 0;
  covered.forEach((bearing, t) => {
    if (bearing >= 0 && placeAt[3 * t] >= 0) risk += areaOf(mesh, t) * perArea[bearing];
  });
  return risk;
}

function nearestSite({ sites }: CompiledHead, [x, y]: Point): string {
  const outside = ({ centre, field }: (typeof sites)[number]) =>
    Math.hypot(
      Math.max(0, Math.abs(x - centre[0]) - field[0] / 2),
      Math.max(0, Math.abs(y - centre[1]) - field[1] / 2),
    );
  return sites.reduce((a, b) => (outside(b) < outside(a) ? b : a)).name;
}
