import { readFileSync } from 'node:fs';
import { verificationCases } from '@flathead/solver/verification';
import { describe, expect, it } from 'vitest';
import { perturbations } from '../../scripts/perturbations.mjs';

/* Whether each is noticed takes a solve or more: `npm run perturb`. */
describe.each(perturbations)('perturbation: $name', ({ file, from, to, noticed }) => {
  it('finds its text once', () => {
    const source = readFileSync(new URL(`../../packages/solver/src/${file}`, import.meta.url), 'utf8');
    expect(source.split(from)).toHaveLength(2);
    expect(to).not.toBe(from);
  });

  it('names checks of the book', () => {
    expect(noticed.length).toBeGreaterThan(0);
    for (const { topic, model, quantity } of noticed)
      expect(
        verificationCases({ topic, model }).filter((check) => check.quantity.startsWith(quantity)).length,
        `${topic}, ${model}: ${quantity}`,
      ).toBeGreaterThan(0);
  });
});
