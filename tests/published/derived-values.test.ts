import { verificationCases } from '@flathead/solver/verification';
import { describe, expect, it } from 'vitest';
import { loadSeries, moments } from './navier.ts';
import { clampedDeflection } from './series/clamped.ts';
import { levy, type Side } from './series/levy.ts';
import { rhombusDeflection } from './series/rhombus.ts';
import { clampedWithShear, squareOnCorners } from './series/ritz.ts';
import { discOnPoints, heldRing } from './series/round.ts';
import { type SineLoad, sineDeflection } from './series/simply-supported.ts';

const nu = 0.3;
const cases = verificationCases();

/** The value that the book gives. */
function book(topic: string, model: string, quantity: string): number {
  const found = cases.filter((each) => each.topic === topic && each.model === model && each.quantity === quantity);
  expect(found.length, `${topic}: ${model}: ${quantity}`).toBe(1);
  return found[0].expected;
}

/** Digits that the book gives, four at least: half a unit in the last of 0.002197 is 2.3e-4. */
const agrees = (value: number, expected: number): void => {
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThan(2.5e-4);
};

const thin = (p: number, r: number) => (p * p + r * r) ** 2;
const uniform = (b: number): SineLoad => ({ pressure: 1, sides: [1, b] });
const sines = (b: number, load: SineLoad, stiffness = thin) => sineDeflection({ a: 1, b, stiffness }, load, [0, 0]);

describe('derived values of the verification book are what their methods give', () => {
  it("Levy's series", () => {
    const sides: [Side, Side, string][] = [
      ['free', 'free', 'both free'],
      ['clamped', 'clamped', 'both clamped'],
      ['simple', 'free', 'simple and free'],
      ['simple', 'clamped', 'simple and clamped'],
      ['clamped', 'free', 'clamped and free'],
    ];
    let checked = 0;
    for (const [below, above, name] of sides) {
      const model = `square, two sides simply supported, the others ${name}`;
      for (const { quantity, expected } of cases.filter((each) => each.model === model)) {
        const y = quantity.includes('centre') ? 0 : quantity.includes(above) ? 0.5 : -0.5;
        const values = levy(1, nu, [below, above], [0, y]);
        agrees(values[quantity.split(' ')[0] as keyof typeof values], expected);
        checked++;
      }
    }
    expect(checked).toBe(13);
    for (const b of [1.5, 2]) {
      const { mxx, myy } = levy(b, nu, ['simple', 'simple'], [0, 0]);
      agrees(mxx, book('simply supported plates', `rectangle b/a ${b}, uniform`, 'mxx at the centre'));
      agrees(myy, book('simply supported plates', `rectangle b/a ${b}, uniform`, 'myy at the centre'));
    }
  });

  it('Navier series', () => {
    const w = (model: string) => book('simply supported plates', model, 'w at the centre');
    agrees(sines(2, { force: 1, at: [0, 0] }), w('rectangle b/a 2, point load at the centre'));
    agrees(sines(1, { pressure: 1, sides: [0.5, 0.5] }), w('square, patch of 0.5 a by 0.5 a'));
    agrees(sines(1, { pressure: 1, sides: [0.3, 0.2] }), w('square, patch of 0.3 a by 0.2 a'));
    const ribbed = (p: number, r: number) => 4 * p ** 4 + 2 * (0.3 + 2 * 0.35) * p * p * r * r + r ** 4;
    agrees(sines(1, uniform(1), ribbed), w('orthotropic square, Dx : Dy : D1 : Dxy = 4 : 1 : 0.3 : 0.35'));
    const plate = { a: 1, b: 1, D: 1, nu, S: Infinity, terms: 400 };
    const [mxx] = moments(plate, loadSeries(plate, { pressure: 1, centre: [0, 0], sides: [0.5, 0.5] }), [0, 0]);
    agrees(mxx, book('simply supported plates', 'square, patch of 0.5 a by 0.5 a', 'mxx at the centre'));
    for (const k of [200, 2000])
      agrees(
        sines(1, uniform(1), (p, r) => thin(p, r) + k),
        book('plates on foundations', `simply supported square, k a^4/D = ${k}, uniform`, 'w at the centre'),
      );
  });

  it("Mindlin's theory: Navier and Ritz", () => {
    const w = (held: string, ratio: number) =>
      book('thick plates', `${held} square t/a ${ratio}, uniform`, 'w at the centre');
    for (const ratio of [0.05, 0.1, 0.2]) {
      // kappa G t a^2/D = 5 (1 - nu) (a/t)^2.
      const S = (5 * (1 - nu)) / ratio ** 2;
      const sheared = (p: number, r: number) => 1 / (1 / thin(p, r) + 1 / (S * (p * p + r * r)));
      agrees(sines(1, uniform(1), sheared), w('simply supported', ratio));
      agrees(clampedWithShear(ratio, nu), w('clamped', ratio));
    }
  });

  it('clamped rectangles by edge moments', () => {
    for (const b of [1, 1.5, 2])
      agrees(
        clampedDeflection(b, 'pressure'),
        book('clamped plates', `${b === 1 ? 'square' : `rectangle b/a ${b}`}, uniform`, 'w at the centre'),
      );
    for (const b of [1, 2])
      agrees(
        clampedDeflection(b, 'point'),
        book(
          'clamped plates',
          `${b === 1 ? 'square' : `rectangle b/a ${b}`}, point load at the centre`,
          'w at the centre',
        ),
      );
  });

  it('rhombs by corner functions', () => {
    for (const degrees of [40, 60, 80])
      agrees(
        rhombusDeflection(degrees),
        book('skew plates', `simply supported rhombus of ${degrees} degrees, uniform`, 'w at the centre'),
      );
  });

  it('discs on points and rings by their series, the square on its corners by Ritz', () => {
    for (const [count, c] of [
      [3, 0.92],
      [3, 0.645],
      [4, 0.85],
      [6, 0.681],
    ])
      agrees(
        discOnPoints(count, c, nu),
        book('plates on points', `disc on ${count} points at ${c} of its radius, uniform`, 'w at the centre'),
      );
    for (const poisson of [0.25, 0.3]) {
      const { centre, side } = squareOnCorners(poisson);
      const model = `square on its corner points, uniform, nu ${poisson}`;
      agrees(centre, book('plates on points', model, 'w at the centre'));
      agrees(side, book('plates on points', model, 'w at the middle of a side'));
    }
    for (const held of ['simple', 'clamped'] as const) {
      const { w, at } = heldRing(0.3, held, nu);
      const name = `ring, both edges ${held === 'simple' ? 'simply supported' : 'clamped'}, inner radius 0.3 a, uniform`;
      const each = cases.find(({ model }) => model === name)!;
      agrees(w, each.expected);
      expect(Number(/w at ([\d.]+) a/.exec(each.quantity)![1])).toBeCloseTo(at, 3);
    }
  });

  it('flat slabs by double series', () => {
    const [terms, s] = [600, 2 * Math.PI];
    for (const [b, model] of [
      [1, 'interior panel, square'],
      [1.5, 'interior panel b/a 1.5'],
    ] as const) {
      let [w, mxx, myy] = [0, 0, 0];
      for (let m = 0; m <= terms; m++)
        for (let n = 0; n <= terms; n++) {
          if (m + n === 0) continue;
          // Reactions on the lattice of columns less the even load; the middle of a panel is half a period away.
          const [p, r] = [s * m, (s * n) / b];
          const wave = -(m === 0 || n === 0 ? 2 : 4) / (p * p + r * r) ** 2;
          const sign = (m + n) % 2 === 0 ? 1 : -1;
          w += wave * (sign - 1);
          mxx += wave * (p * p + nu * r * r) * sign;
          myy += wave * (r * r + nu * p * p) * sign;
        }
      agrees(w, book('flat slabs', model, 'w at the centre'));
      expect(Math.abs(mxx / book('flat slabs', model, 'mxx at the centre') - 1)).toBeLessThan(1e-3);
      if (b > 1) expect(Math.abs(myy / book('flat slabs', model, 'myy at the centre') - 1)).toBeLessThan(1e-3);
    }
  });
});
