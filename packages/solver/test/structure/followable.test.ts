import { describe, expect, it } from 'vitest';
import { Fault } from '../../src/fault/fault.ts';
import type { Ring } from '../../src/geometry/point.ts';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { requireFollowable } from '../../src/structure/followable.ts';
import { plateDomain } from '../../src/structure/plate-domain.ts';

/** A square of side a: mean width 2 a^2 / 4 a = a/2. */
const square = (a: number): Ring => [
  [0, 0],
  [a, 0],
  [a, a],
  [0, a],
];
/** Of length L and width w: A = L w, P = 2 (L + w), so its mean width 2 A/P is just under w. */
const strip = (w: number, length = 1): Ring => [
  [0, 0],
  [length, 0],
  [length, w],
  [0, w],
];
const refusal = (ring: Ring, base: number, path = 'outline'): Fault | null => {
  try {
    requireFollowable(ring, base, path);
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown;
    throw thrown;
  }
  return null;
};

describe('shapes that elements follow', () => {
  it('may be as narrow as a hundredth of the elements, however long', () => {
    // P / width = 8e5.
    expect(refusal(strip(1.01e-2, 4000), 1)).toBeNull();
    expect(refusal(strip(0.99e-2, 4000), 1)).toMatchObject({ code: 'TOO_LARGE', path: 'outline' });
    expect(refusal(strip(0.99e-2, 4000).toReversed(), 1)).not.toBeNull();
  });

  it('may be narrower while 20,000 elements go round them', () => {
    // P = 2 (1 + w), width w / (1 + w): P / width = 2 (1 + w)^2 / w = 20,000 for w = 1.0002e-4.
    expect(refusal(strip(1.01e-4), 1000)).toBeNull();
    expect(refusal(strip(0.99e-4), 1000)).not.toBeNull();
    expect(refusal(square(1e-9), 1000)).toBeNull();
  });

  it('say how wide they are, how wide is wanted, and how many elements that would be', () => {
    const fault = refusal(strip(1e-5), 1000, 'openings.2')!;
    expect(fault.message).toMatch(/^The shape of openings\.2 is 0\.000010 mm wide on average along sides of 2\.00 mm/);
    expect(fault.message).toMatch(/about 2000\d\d elements/);
    // The lesser of the two bounds: base / 100 and P / 20,000.
    expect(fault.details).toMatchObject({ expected: 'at least 0.00010 mm' });
    expect(refusal(strip(1e-3, 300), 1, '')!.details).toMatchObject({ expected: 'at least 0.010 mm' });
    expect(refusal(strip(1e-3, 300), 1, '')!.message).toMatch(/^The shape is/);
  });
});

describe('areas that elements follow', () => {
  it('are named where the problem reports them, and not where they are probe fields', () => {
    const sliver = strip(1e-4, 300);
    const plate: PlateProblem = { plate: 1, outline: { rectangle: [400, 40] }, section: { D: 1e5, nu: 0.3 } };
    const told = (problem: PlateProblem) => {
      try {
        plateDomain(problem, [sliver]);
      } catch (thrown) {
        return thrown;
      }
    };
    expect(
      told({ ...plate, report: { over: { polygon: sliver.map(([x, y]): [number, number] => [x, y]) } } }),
    ).toMatchObject({ path: 'report.over' });
    expect(told(plate)).toMatchObject({ code: 'TOO_LARGE', path: '' });
    expect(told({ ...plate, report: { at: [[0, 0]] } })).toMatchObject({ path: '' });
  });
});
