import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import type { PlateModel, Topic } from '../check.ts';
import { beams, derived, type Evidence } from '../evidence.ts';
import {
  a,
  clamped,
  E,
  everywhere,
  middle,
  P,
  plateOf,
  posed,
  q,
  rectangle,
  rigidity,
  shearRigidity,
  simple,
  sizeFor,
  units,
} from '../posed.ts';

const mindlin = derived("Navier series of Mindlin's theory, shear correction 5/6");
const ritz = derived("Ritz method of Mindlin's theory, Legendre polynomials, shear correction 5/6");
const disc = derived('closed form: that of the thin disc and q a^2/(4 kappa G t)');
const beam = derived("Timoshenko's beam: P L^3/(3 E I) + P L/(kappa G A), shear correction 5/6", beams);

const section = (t: number) => ({ E, nu: 0.3, thickness: t });
const inUnits = (t: number) => units('q a^4/D', (q * a ** 4) / rigidity(0.3, t), 'q a^2', q * a ** 2);

function square(held: 'simply supported' | 'clamped', ratio: number, expected: number, from: Evidence): PlateModel {
  const t = ratio * a;
  const edges = held === 'clamped' ? clamped : simple;
  return posed(
    `${held} square t/a ${ratio}, uniform`,
    { ...rectangle(1, { edges, loads: everywhere, theory: 'shear' }), section: section(t) },
    sizeFor(a * a),
    [inUnits(t).w('at the centre', middle, expected, from)],
  );
}

function round(edges: PlateProblem['edges'], name: string, thin: number): PlateModel {
  const t = 0.2 * a;
  const added = rigidity(0.3, t) / (4 * shearRigidity(t) * a ** 2);
  return posed(
    `${name} disc t/a 0.2, uniform`,
    { ...plateOf({ circle: 2 * a }, { edges, loads: everywhere, theory: 'shear' }), section: section(t) },
    sizeFor(Math.PI * a * a),
    [inUnits(t).w('at the centre', middle, thin + added, disc)],
  );
}

/** Length and width of the cantilever, mm; no Poisson effect. */
const [L, width, t] = [20, 4, 5];
const bent = (P * L ** 3) / (3 * E * ((width * t ** 3) / 12));
const sheared = (P * L) / (shearRigidity(t, 0) * width);

export const thickPlates: Topic = {
  name: 'thick plates',
  about: 'With transverse shear (Mindlin), nu = 0.3; simply supported edges are hard ones.',
  models: [
    square('simply supported', 0.05, 0.004115, mindlin),
    square('simply supported', 0.1, 0.0042728, mindlin),
    square('simply supported', 0.2, 0.0049043, mindlin),
    square('clamped', 0.05, 0.0013273, ritz),
    square('clamped', 0.1, 0.0015046, ritz),
    square('clamped', 0.2, 0.0021722, ritz),
    round(clamped, 'clamped', 1 / 64),
    round(simple, 'simply supported', 5.3 / 1.3 / 64),
    posed(
      'short cantilever, load along its end',
      {
        plate: 1,
        outline: { rectangle: [L, width], centre: [L / 2, 0] },
        section: { E, nu: 0, thickness: t },
        edges: [{ along: { from: [0, -width / 2], to: [0, width / 2] }, held: 'clamped' }],
        loads: [{ along: { from: [L, -width / 2], to: [L, width / 2] }, force: P }],
        theory: 'shear',
      },
      0.25,
      [units('P L^3/(3 E I)', bent, '', 1).w('at the end', [L, 0], 1 + sheared / bent, beam)],
    ),
  ],
};
