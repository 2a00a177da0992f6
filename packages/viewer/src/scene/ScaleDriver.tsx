import { useFrame } from '@react-three/fiber';
import { useEffect } from 'react';
import { useStageFrame } from './stage-frame.ts';

/** Time in which most of a change of the factor is done, s. */
const EASE = 0.09;
const STILL = window.matchMedia('(prefers-reduced-motion: reduce)');

/** Lets the factor on the deflection glide to where it is wanted. */
export function ScaleDriver({ to }: { to: number }) {
  const stage = useStageFrame();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new aim needs a frame to start gliding
  useEffect(() => stage.redraw(), [stage, to]);
  useFrame((_, delta) => {
    const { scale } = stage;
    const left = to - scale.value;
    if (left === 0) return;
    const near = Math.abs(left) < 1e-3 * Math.max(1, Math.abs(to));
    scale.value = near || STILL.matches ? to : scale.value + left * (1 - Math.exp(-Math.min(delta, 0.05) / EASE));
    stage.redraw();
  });
  return null;
}
