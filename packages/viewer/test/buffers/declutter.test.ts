import { describe, expect, it } from 'vitest';
import { declutter } from '../../src/buffers/declutter.ts';

describe('declutter', () => {
  const box = (x: number, weight: number) => ({ x, y: 0, width: 40, height: 18, weight });

  it('shows all that have room', () => {
    expect(declutter([box(0, 1), box(41, 2), box(82, 3)])).toEqual([true, true, true]);
  });

  it('lets the weightier of two that overlap stay', () => {
    expect(declutter([box(0, 1), box(30, 9), box(60, 2), box(75, 1)])).toEqual([false, true, false, true]);
  });

  it('shows none on what is taken', () => {
    const taken = { left: 50, top: -4, width: 8, height: 8 };
    expect(declutter([box(0, 1), box(41, 2), box(82, 3)], [taken])).toEqual([true, false, true]);
  });
});
