import { draftHead, solveHead } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { BODIES, FASTENERS, FIRST_DRAFT, FRAMES, PATTERNS, PROBES } from '../../src/start/presets.ts';

describe('starting points', () => {
  it.each([...PATTERNS, ...PROBES, ...BODIES, ...FRAMES, ...FASTENERS])(
    'makes a head that can be solved of $label',
    (preset) => {
      const model = draftHead(preset.fill(FIRST_DRAFT));
      const { cases } = solveHead(model, { quality: 'live' }).result;
      const { columns, rows, probes } = model.sites;
      // All that the probes push with, and no more: sites times probes times preload.
      expect(cases[0].load).toBeCloseTo(columns * rows * probes.count * probes.preload, 6);
      expect(cases[0].reaction).toBeCloseTo(-cases[0].load, 6);
    },
  );
});
