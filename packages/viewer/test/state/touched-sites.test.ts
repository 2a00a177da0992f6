import { describe, expect, it } from 'vitest';
import { parseSites, touchedBy, touchKind } from '../../src/state/touched-sites.ts';

const SITES = ['A1', 'A2', 'B1', 'B2'];

describe('parseSites', () => {
  it.each([
    ['A1 B2', ['A1', 'B2']],
    [' a1,b2 ; A1 ', ['A1', 'B2']],
    ['', []],
  ])('reads "%s"', (text, names) => {
    expect(parseSites(text, SITES)).toEqual({ names, unknown: null });
  });

  it('names the first site that the head does not have', () => {
    expect(parseSites('A1 C1 Z9', SITES)).toEqual({ names: ['A1'], unknown: 'C1' });
  });
});

describe('touchedBy', () => {
  it.each(['none', 'all', 'list', 'wafer'] as const)('gives what is of its kind: %s', (kind) => {
    expect(touchKind(touchedBy(kind, SITES))).toBe(kind);
  });
});
