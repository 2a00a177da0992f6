import { Fault } from '../fault/fault.ts';
import { didYouMean } from '../plate/near-names.ts';
import type { HeadModel, Material } from './head-model.ts';

/** A material that ships with Flathead. Values at 20 degC, to be replaced by the supplier's where they matter. */
export interface MaterialPreset extends Material {
  /** In words, for a list to choose from. */
  readonly title: string;
  /** `published`: read in the source named; `memory`: recalled from it, good to some per cent. */
  readonly basis: 'published' | 'memory';
  readonly source: string;
}

type Row = readonly [title: string, gpa: number, nu: number, density: number, ppm: number, source: string];
type CeramicRow = readonly [...Row, strength: number, weibull?: number];

const SHEETS = 'typical of data sheets';
const EN10088 = 'EN 10088-1 (published extracts)';
const E_OF_STEEL = 'typical of data sheets; E EN 10088-1';
const NIST =
  'typical of data sheets, E 350 to 390 GPa; NIST SRD 150 has 416 for full density and strength 380 +- 50 MPa';

const CERAMICS: Readonly<Record<string, CeramicRow>> = {
  'alumina-99.5': ['alumina 99.5 %', 370, 0.23, 3.9, 6.5, NIST, 380, 10],
  'alumina-96': ['alumina 96 %', 320, 0.22, 3.75, 6.5, SHEETS, 300, 10],
  'zirconia-3y-tzp': ['zirconia 3Y-TZP', 210, 0.3, 6.05, 10.5, SHEETS, 1000, 12],
  'silicon-nitride': ['silicon nitride', 305, 0.27, 3.25, 3, SHEETS, 800, 15],
  'aluminium-nitride': ['aluminium nitride', 320, 0.24, 3.3, 4.5, SHEETS, 330, 10],
  'mica-glass-ceramic': ['machinable mica glass-ceramic', 66, 0.29, 2.52, 9.3, SHEETS, 94],
};

const METALS: Readonly<Record<string, Row>> = {
  'stainless-304': ['stainless steel 304', 200, 0.29, 7.9, 16, EN10088],
  'stainless-316': ['stainless steel 316', 200, 0.29, 7.9, 16, EN10088],
  'stainless-17-4': ['stainless steel 17-4PH', 200, 0.27, 7.8, 10.9, E_OF_STEEL],
  'stainless-420': ['stainless steel 420', 215, 0.28, 7.7, 10.5, E_OF_STEEL],
  'tool-steel': ['tool steel', 207, 0.29, 7.8, 11.5, SHEETS],
  'nickel-iron-36': ['36 % nickel iron, low expansion', 141, 0.29, 8.05, 1, SHEETS],
  'nickel-cobalt-iron': ['nickel-cobalt iron for glass seals', 138, 0.32, 8.36, 5.3, SHEETS],
  'titanium-6al-4v': ['titanium 6Al-4V', 114, 0.34, 4.43, 8.6, SHEETS],
  'aluminium-6061': ['aluminium 6061', 69, 0.33, 2.7, 23.6, SHEETS],
  'aluminium-7075': ['aluminium 7075', 72, 0.33, 2.81, 23.6, SHEETS],
};

const POLYMERS: Readonly<Record<string, Row>> = {
  peek: ['PEEK', 3.6, 0.4, 1.3, 47, SHEETS],
  polyimide: ['polyimide', 3.5, 0.4, 1.4, 50, SHEETS],
  'fr-4': ['FR-4 in-plane', 22, 0.15, 1.9, 14, 'typical of data sheets; expansion 12 to 16e-6/K'],
};

/** E at 100 and 200 degC, GPa (EN 10088-1, published extracts). */
const HOT_STEELS: Readonly<Record<string, readonly [at100: number, at200: number]>> = {
  'stainless-304': [194, 186],
  'stainless-17-4': [195, 185],
  'stainless-420': [212, 205],
};

/** Presets by name. */
export const materialPresets: Readonly<Record<string, MaterialPreset>> = {
  ...presets(CERAMICS, 'ceramic'),
  ...presets(METALS, 'metal'),
  ...presets(POLYMERS, 'polymer'),
};

/**
 * The material of a name: the model's own wins over a preset.
 *
 * @param path of the name in the model
 * @throws Fault UNKNOWN_MATERIAL with names that are near, and all there are
 */
export function findMaterial(model: Pick<HeadModel, 'materials'>, name: string, path: string): Material {
  const own = model.materials ?? {};
  if (Object.hasOwn(own, name)) return own[name];
  if (Object.hasOwn(materialPresets, name)) return materialPresets[name];
  const known = [...Object.keys(own), ...Object.keys(materialPresets)];
  throw new Fault(
    'UNKNOWN_MATERIAL',
    `There is no material "${name}".${didYouMean(name, known)} Known are ${known.join(', ')}; add others under "materials" with E and nu.`,
    path,
    { value: name, expected: known },
  );
}

function presets(
  rows: Readonly<Record<string, Row | CeramicRow>>,
  kind: NonNullable<Material['kind']>,
): Record<string, MaterialPreset> {
  return Object.fromEntries(
    Object.entries(rows).map(([name, [title, gpa, nu, density, ppm, source, strength, weibull]]) => [
      name,
      {
        title,
        kind,
        E: gpa * 1000,
        nu,
        ...hotModulus(name),
        density,
        expansion: ppm * 1e-6,
        ...(strength === undefined ? {} : { strength }),
        ...(weibull === undefined ? {} : { weibull }),
        source,
        basis: source === EN10088 ? 'published' : 'memory',
      },
    ]),
  );
}

function hotModulus(name: string): Pick<Material, 'modulus'> {
  if (!Object.hasOwn(HOT_STEELS, name)) return {};
  const [at100, at200] = HOT_STEELS[name];
  return {
    modulus: [
      [100, at100 * 1000],
      [200, at200 * 1000],
    ],
  };
}
