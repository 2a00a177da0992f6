import { describe, expect, it } from 'vitest';
import { Fault } from '../../src/fault/fault.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import { meshDomain } from '../../src/mesh/mesh-domain.ts';
import type { SizeField } from '../../src/mesh/size-field.ts';

const [width, height] = [80, 50];
const outline = [shapeRing({ rectangle: [width, height] }, { chord: 1 })];

/** What a refusal says of the nodes that a plate would need, and where most. */
function refusal(size: SizeField, maxNodes = 9000) {
  try {
    meshDomain({ outline, regions: [] }, size, { maxNodes });
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown.details as { readonly value: number; readonly where: [number, number] };
    throw thrown;
  }
  throw new Error('not refused');
}

// Equilateral triangles of edge h have 2 / (sqrt(3) h^2) nodes an area.
describe('nodes that a domain is estimated to need', () => {
  it('are those of equilateral triangles of the wanted size', () => {
    for (const h of [0.3, 0.1])
      expect(refusal(() => h).value / ((2 * width * height) / (Math.sqrt(3) * h * h))).toBeCloseTo(1, 6);
  });

  it('are the integral of that over a plate with one fine place far from its sides, which is named', () => {
    const size: SizeField = (x, y) => 0.3 + 0.1 * Math.hypot(x - 10, y - 5);
    const step = 0.25;
    let expected = 0;
    for (let x = (step - width) / 2; x < width / 2; x += step)
      for (let y = (step - height) / 2; y < height / 2; y += step)
        expected += (2 * step * step) / (Math.sqrt(3) * size(x, y) ** 2);
    const { value, where } = refusal(size, 500);
    // Read at some 2,000 places, 1.4 mm apart.
    expect(Math.abs(value / expected - 1)).toBeLessThan(0.1);
    expect(Math.hypot(where[0] - 10, where[1] - 5)).toBeLessThan(1.5);
  });
});
