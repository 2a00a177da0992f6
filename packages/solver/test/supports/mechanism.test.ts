import { describe, expect, it } from 'vitest';
import type { SupportSolve } from '../../src/supports/compliance.ts';
import { requireHeld } from '../../src/supports/mechanism.ts';

const NONE = new Uint32Array(0);
/** Supports at places of a free plate that is 2 by 2: lift and the tilts along x and y. */
const at = (...places: (readonly [number, number])[]): SupportSolve[] =>
  places.map(([x, y], i) => ({
    support: { name: `S${i + 1}`, row: { dof: Uint32Array.of(0), value: Float64Array.of(1) }, stiffness: null },
    half: { supernode: NONE, to: NONE, start: NONE, value: new Float64Array(0) },
    motion: Float64Array.of(1, x, y),
  }));
const refusal = (supports: SupportSolve[], free = 3): unknown => {
  try {
    requireHeld(supports, free);
  } catch (thrown) {
    return thrown;
  }
  return null;
};
const saying = (message: RegExp, freeMotions: number) => ({
  code: 'MECHANISM',
  path: 'supports',
  message: expect.stringMatching(message),
  details: { freeMotions },
});
const line = (count: number) => Array.from({ length: count }, (_, i): [number, number] => [i / count, 0.5]);

describe('supports that leave a plate free to move', () => {
  it('are none at all', () => {
    expect(refusal([])).toMatchObject(saying(/^Nothing holds the plate: .* Add three supports/, 3));
  });

  it('are one, which leaves two turns', () => {
    expect(refusal(at([0.3, 0.2]))).toMatchObject(
      saying(
        /^Support S1 leaves the plate free to rotate about more than one line; add 2 supports off that line\.$/,
        2,
      ),
    );
  });

  it('are any number on one line, of which six are named', () => {
    const turn = 'leave the plate free to rotate about one line; add a support off that line\\.$';
    expect(refusal(at(...line(2)))).toMatchObject(saying(new RegExp(`^Supports S1, S2 ${turn}`), 1));
    expect(refusal(at(...line(6)))).toMatchObject(saying(new RegExp(`S5, S6 ${turn}`), 1));
    expect(refusal(at(...line(8)))).toMatchObject(saying(new RegExp(`S5, S6 and 2 more ${turn}`), 1));
  });

  it('are not three off one line by more than rounding', () => {
    const off = (by: number) => at([-1, 0], [1, 0], [0, by]);
    expect(refusal(off(1))).toBeNull();
    expect(refusal(off(1e-5))).toBeNull();
    expect(refusal(off(1e-9))).not.toBeNull();
  });

  it('are judged by the motions that are free: of a hinged plate one, at any distance from the hinge', () => {
    const turning = (...shares: number[]): SupportSolve[] =>
      at(...shares.map((): [number, number] => [0, 0])).map((solve, i) => ({
        ...solve,
        motion: Float64Array.of(shares[i]),
      }));
    expect(refusal(turning(0.5), 1)).toBeNull();
    expect(refusal(turning(1e-3), 1)).toBeNull();
    expect(refusal(turning(0), 1)).toMatchObject(saying(/^Support S1 leaves/, 1));
    expect(refusal(turning(0, 0), 1)).not.toBeNull();
    expect(refusal(turning(), 0)).toBeNull();
    expect(refusal(turning(), 1)).not.toBeNull();
  });
});
