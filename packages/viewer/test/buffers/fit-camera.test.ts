import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { fitCamera } from '../../src/buffers/fit-camera.ts';

/** Largest place of any corner on the screen, -1 to 1 each way. */
function corners(half: readonly [number, number, number], direction: readonly [number, number, number]) {
  const insets = { left: 0.05, right: 0.1, top: 0.1, bottom: 0.2 };
  const { position, target } = fitCamera(half, direction, 22, 1.6, insets);
  const camera = new PerspectiveCamera(22, 1.6, 1, 1e5);
  camera.up.set(0, 0, 1);
  camera.position.set(...position);
  camera.lookAt(new Vector3(...target));
  camera.updateMatrixWorld();
  const places = [-1, 1].flatMap((sx) =>
    [-1, 1].flatMap((sy) => [-1, 1].map((sz) => new Vector3(sx * half[0], sy * half[1], sz * half[2]).project(camera))),
  );
  return {
    left: Math.min(...places.map(({ x }) => x)),
    right: Math.max(...places.map(({ x }) => x)),
    bottom: Math.min(...places.map(({ y }) => y)),
    top: Math.max(...places.map(({ y }) => y)),
  };
}

describe('fitCamera', () => {
  it.each([
    ['aslant', [60, 35, 4], [-0.3, -0.9, 0.9]],
    ['from above', [60, 35, 4], [0, -1e-4, 1]],
    ['a long row from above', [200, 10, 4], [0, -1e-4, 1]],
    ['a tall head', [20, 90, 4], [-0.3, -0.9, 0.9]],
  ] as const)('keeps the head within the free part of the stage: %s', (_, half, direction) => {
    const { left, right, bottom, top } = corners(half, direction);
    const slack = 0.02;
    expect(left).toBeGreaterThan(-1 + 2 * 0.05 - slack);
    expect(right).toBeLessThan(1 - 2 * 0.1 + slack);
    expect(bottom).toBeGreaterThan(-1 + 2 * 0.2 - slack);
    expect(top).toBeLessThan(1 - 2 * 0.1 + slack);
    const filled = Math.max((right - left) / (2 - 0.3), (top - bottom) / (2 - 0.6));
    expect(filled).toBeGreaterThan(0.97);
  });
});
