/** What the Weibull statistics of a ceramic are read from. */
export interface FlexuralStrength {
  /** MPa, in four-point bending of the standard bar. */
  readonly strength: number;
  /** Whether that is the mean of the bars or their characteristic strength, at which 1 - 1/e of them broke. */
  readonly is: 'mean' | 'characteristic';
  /** Weibull modulus. */
  readonly modulus: number;
}

/** ASTM C1161 configuration B, four-point-1/4: outer span, width and depth, mm. */
const BAR = { span: 40, width: 4, depth: 3 } as const;

/**
 * Characteristic strength of 1 mm2 under uniform tension, MPa: `sigma_0 = sigma_theta S_E^(1/m)` with the effective area
 * of the standard bar, `S_E = L (w + d/(m + 1)) (m + 2)/(2 (m + 1))` (ASTM C1239, C1683), and the characteristic strength
 * of the bars `sigma_theta = mean / Gamma(1 + 1/m)`.
 */
export function unitAreaStrength({ strength, is, modulus: m }: FlexuralStrength): number {
  const characteristic = is === 'mean' ? strength / gamma(1 + 1 / m) : strength;
  return characteristic * barArea(m) ** (1 / m);
}

/** Effective area of the standard bar, mm2. */
export function barArea(m: number): number {
  const { span, width, depth } = BAR;
  return (span * (width + depth / (m + 1)) * (m + 2)) / (2 * (m + 1));
}

/** Lanczos approximation with g = 7 and nine terms, to 1e-14 for z > 1/2 (Godfrey 2001). */
const LANCZOS = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
];

/** Gamma function for z > 1/2. */
export function gamma(z: number): number {
  const [first, ...rest] = LANCZOS;
  const sum = rest.reduce((total, c, k) => total + c / (z + k), first);
  const t = z + 6.5;
  return Math.sqrt(2 * Math.PI) * t ** (z - 0.5) * Math.exp(-t) * sum;
}
