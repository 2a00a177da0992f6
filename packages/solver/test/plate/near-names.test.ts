import { describe, expect, it } from 'vitest';
import { didYouMean, nearNames } from '../../src/plate/near-names.ts';

const known = ['fasteners', 'frame', 'flatness', 'alumina-96', 'alumina-99.5', 'mica-glass-ceramic'];

describe('nearNames', () => {
  it.each([
    ['fasternes', ['fasteners']],
    ['Fasteners', ['fasteners']],
    ['farme', ['frame']],
    ['Alumina 96', ['alumina-96', 'alumina-99.5']],
    ['glass', ['mica-glass-ceramic']],
    ['bolts', []],
    ['', []],
    ['x'.repeat(10_000), []],
  ])('for %j', (word, near) => {
    expect(nearNames(word, known)).toEqual(near);
  });

  it('puts them as a question', () => {
    expect(didYouMean('alumina', known)).toBe(' Did you mean "alumina-96" or "alumina-99.5"?');
    expect(didYouMean('bolts', known)).toBe('');
  });
});
