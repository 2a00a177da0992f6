import { describe, expect, it } from 'vitest';
import { screws } from '../../src/model/screws.ts';
import { coreArea, tappedShearArea } from '../../src/model/thread.ts';

/**
 * Basic profile (ISO 68-1, ASME B1.1, memory): 60 degrees, H = sqrt(3)/2 P. The pitch diameter lies 3/8 H under the
 * crest on either side; the root of a metric screw is rounded, H/6 above the sharp one, that of an inch screw counts
 * another 3/8 H below the pitch diameter.
 */
const H = Math.sqrt(3) / 2;
const pitchDiameter = (d: number, P: number) => d - (2 * 3 * H * P) / 8;
const metricRoot = (d: number, P: number) => d - 2 * (7 / 8 - 1 / 6) * H * P;
const inchRoot = (d: number, P: number) => pitchDiameter(d, P) - (2 * 3 * H * P) / 8;

describe('threads', () => {
  it.each(Object.entries(screws))(
    '%s has the stress area pi/4 ((d2 + d3)/2)^2 within 1 % (ISO 898-1, ASME B1.1)',
    (size, { diameter, pitch, stressArea }) => {
      const root = size.startsWith('#') ? inchRoot(diameter, pitch) : metricRoot(diameter, pitch);
      const mean = (pitchDiameter(diameter, pitch) + root) / 2;
      const area = (Math.PI / 4) * mean ** 2;
      expect(Math.abs(stressArea / area - 1)).toBeLessThan(0.01);
    },
  );

  it('have a core of the metric root diameter', () => {
    for (const screw of Object.values(screws))
      expect(coreArea(screw) / ((Math.PI / 4) * metricRoot(screw.diameter, screw.pitch) ** 2)).toBeCloseTo(1, 5);
  });

  it('shear off on the cylinder over the crests of the screw, less its gaps', () => {
    // On that cylinder the tapped thread is solid but for the crest of the screw, P/8 wide (basic profile): 7/8.
    for (const screw of Object.values(screws))
      expect(tappedShearArea(screw, 5) / ((7 / 8) * Math.PI * screw.diameter * 5)).toBeCloseTo(1, 5);
  });
});
