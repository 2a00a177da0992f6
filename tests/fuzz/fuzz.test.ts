import { describe, expect, it } from 'vitest';
import { caseOfSeed } from './case-of-seed.ts';
import { outcomeOf, SLOWEST } from './outcome.ts';
import pinned from './pinned.json' with { type: 'json' };

/** Seeds run here; `npm run fuzz` runs 10,000. */
const SEEDS = 300;

function survives(seed: number): string {
  const begin = performance.now();
  const given = caseOfSeed(seed);
  try {
    const outcome = outcomeOf(given);
    expect((performance.now() - begin) / 1000, `seed ${seed} took too long`).toBeLessThan(SLOWEST);
    return `${given.of}, ${given.kind}: ${outcome}`;
  } catch (thrown) {
    throw new Error(`seed ${seed}, ${given.kind} ${given.of}: ${thrown instanceof Error ? thrown.message : thrown}`, {
      cause: thrown,
    });
  }
}

describe('any model is solved with finite numbers or refused with code, path and remedy', () => {
  it(`seeds 0 to ${SEEDS - 1}`, () => {
    const counts = new Map<string, number>();
    for (let seed = 0; seed < SEEDS; seed++) {
      const outcome = survives(seed);
      counts.set(outcome, (counts.get(outcome) ?? 0) + 1);
    }
    console.info(
      [...counts]
        .sort()
        .map(([name, count]) => `${count} x ${name}`)
        .join('\n'),
    );
    const solved = [...counts].filter(([name]) => name.endsWith('valid: solved')).reduce((sum, [, n]) => sum + n, 0);
    // Otherwise the models are too wild to reach the solver.
    expect(solved).toBeGreaterThan(SEEDS / 4);
  }, 240_000);

  it.each(pinned.seeds)('seed %i, which failed once', (seed) => {
    survives(seed);
  });
});
