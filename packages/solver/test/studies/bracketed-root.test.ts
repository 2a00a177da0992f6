import { describe, expect, it } from 'vitest';
import { bracketedRoot } from '../../src/studies/bracketed-root.ts';

describe('root between two points', () => {
  const cases: readonly [string, (x: number) => number, number, number, number][] = [
    // Brent's own kinds: smooth, a pole-like bend, a multiple root, a jump.
    ['x^3 - 2', (x) => x ** 3 - 2, 0, 2, 2 ** (1 / 3)],
    ['cos x - x', (x) => Math.cos(x) - x, 0, 1, 0.739085133215161],
    ['1/(x - 0.3) - 5', (x) => 1 / (x - 0.3) - 5, 0.3001, 3, 0.5],
    ['(x - 1)^5', (x) => (x - 1) ** 5, 0, 3, 1],
    ['sign(x - 0.7)', (x) => (x < 0.7 ? -1 : 1), 0, 1, 0.7],
    ['falling', (x) => 1 - x, -4, 9, 1],
  ];
  it.each(cases)('%s', (_, f, a, b, root) => {
    let calls = 0;
    const counted = (x: number): number => {
      calls += 1;
      return f(x);
    };
    const found = bracketedRoot(counted, { x: a, f: f(a) }, { x: b, f: f(b) }, 1e-9);
    expect(Math.abs(found - root)).toBeLessThan(_ === '(x - 1)^5' ? 1e-8 : 2e-9);
    expect(calls).toBeLessThan(80);
  });

  it('needs few steps where the function is smooth', () => {
    let calls = 0;
    const f = (x: number): number => {
      calls += 1;
      return 1 / x ** 3 - 0.02;
    };
    bracketedRoot(f, { x: 3, f: f(3) }, { x: 6, f: f(6) }, 1e-5);
    expect(calls).toBeLessThan(9);
  });

  it('takes an end that is the root', () => {
    expect(bracketedRoot((x) => x, { x: 0, f: 0 }, { x: 1, f: 1 }, 1e-9)).toBe(0);
    expect(bracketedRoot((x) => x, { x: -1, f: -1 }, { x: 0, f: 0 }, 1e-9)).toBe(0);
  });
});
