import type { PlateModel, Topic } from '../check.ts';
import { beams, derived, published, tables } from '../evidence.ts';
import { a, everywhere, middle, onRectangle, posed, q, simple, units } from '../posed.ts';
import { base, composite, LENGTH, layered, onEnds, onTop, own, steppedBeam, strip, WIDTH } from '../strips.ts';

const parallelAxes = derived('beam theory: parallel axes, and Mohr for the change of section', beams);
const FORCE = 40;
const { E, thickness } = base;
const EI = (modulus: number, t: number) => (modulus * WIDTH * t ** 3) / 12;

/** A second bar over the middle 40 mm of a strip on its ends. */
function bar(what: string, E2: number, t2: number, join: 'bonded' | 'sliding'): PlateModel {
  const rib = 40;
  const both = join === 'bonded' ? composite(E, WIDTH, thickness, E2, WIDTH, t2) : EI(E, thickness) + EI(E2, t2);
  const expected = steppedBeam(FORCE / LENGTH, EI(E, thickness), both, rib);
  return posed(
    `strip with ${what} ${join === 'bonded' ? 'bonded' : 'sliding'} on its middle`,
    {
      plate: 1,
      outline: strip(LENGTH),
      section: base,
      regions: [{ shape: strip(rib), section: layered([own, onTop(E2, t2)], join) }],
      edges: onEnds(LENGTH, WIDTH),
      loads: [{ over: 'all', force: FORCE }],
    },
    // The coarsest mesh has four elements along the rib.
    2.5,
    [units('mm', 1, '', 1).w('in the middle', middle, expected, parallelAxes)],
  );
}

/** Flange a twentieth as wide as the span, the rib in its middle. Shear lag is below 0.1 %. */
function tBeam(): PlateModel {
  const [b, rib, t2, length] = [8, 2, 5, 160];
  const expected = (5 * FORCE * length ** 3) / (384 * composite(E, b, thickness, E, rib, t2));
  return posed(
    'T beam of a flange and a rib',
    {
      plate: 1,
      outline: strip(length, b),
      section: base,
      regions: [{ shape: strip(length, rib), section: layered([own, onTop(E, t2)]) }],
      edges: onEnds(length, b),
      loads: [{ over: strip(length, rib), force: FORCE }],
    },
    1,
    [units('mm', 1, '', 1).w('in the middle', middle, expected, parallelAxes)],
  );
}

/** Skins on a soft core, symmetric about z = 0: D = sum E (z2^3 - z1^3)/(3 (1 - nu^2)). */
function sandwich(): PlateModel {
  const nu = 0.3;
  const [skin, core, ts, tc] = [2e5, 2e4, 0.5, 3];
  const D = ((2 / 3) * (core * (tc / 2) ** 3 + skin * ((tc / 2 + ts) ** 3 - (tc / 2) ** 3))) / (1 - nu ** 2);
  const section = layered([
    { E: skin, nu, thickness: ts, bottom: -tc / 2 - ts },
    { E: core, nu, thickness: tc, bottom: -tc / 2 },
    { E: skin, nu, thickness: ts, bottom: tc / 2 },
  ]);
  return onRectangle(
    'simply supported square of three bonded layers',
    1,
    { section, edges: simple, loads: everywhere },
    [
      units('q a^4/D', (q * a ** 4) / D, '', 1).w(
        'at the centre',
        middle,
        0.00406235,
        published(`${tables}, Table 8, with the rigidity of the layers added up`),
      ),
    ],
  );
}

export const compositeSections: Topic = {
  name: 'composite sections',
  about: 'Layers bonded off the mid-plane, or sliding on each other, as frames and ribs are.',
  models: [
    bar('a bar of the same modulus', 3.2e5, 3, 'bonded'),
    bar('a softer, thicker bar', 2e5, 4, 'bonded'),
    bar('a thin, stiff bar', 6e5, 1, 'bonded'),
    bar('a softer, thicker bar', 2e5, 4, 'sliding'),
    tBeam(),
    sandwich(),
  ],
};
