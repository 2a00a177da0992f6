import { useFrame } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { useExaggeration } from '../state/use-exaggeration.ts';
import { useView } from '../state/use-workbench.ts';
import { useStageFrame } from './stage-frame.ts';

/** Time in which most of a change of the factor is done, s. */
const EASE = 0.09;
/** From none to full and back, s. */
const SWING = 2.8;
const STILL = window.matchMedia('(prefers-reduced-motion: reduce)');

/**
 * Lets the factor on the deflection glide to where it is wanted, or swing between none and that while it is played. Where
 * motion is to be reduced it jumps, and playing shows the head at rest.
 */
export function ScaleDriver() {
  const stage = useStageFrame();
  const { factor: to } = useExaggeration();
  const playing = useView((view) => view.playing);
  const clock = useRef(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new aim needs a frame to start gliding
  useEffect(() => {
    // Begins from full.
    clock.current = SWING / 2;
    stage.redraw();
  }, [stage, to, playing]);
  useFrame((_, delta) => {
    const { scale } = stage;
    const step = Math.min(delta, 0.05);
    if (playing && !STILL.matches) {
      clock.current = (clock.current + step) % SWING;
      scale.value = (to * (1 - Math.cos((2 * Math.PI * clock.current) / SWING))) / 2;
      stage.redraw();
      return;
    }
    const aim = playing ? 0 : to;
    const left = aim - scale.value;
    if (left === 0) return;
    const near = Math.abs(left) < 1e-3 * Math.max(1, Math.abs(to));
    scale.value = near || STILL.matches ? aim : scale.value + left * (1 - Math.exp(-step / EASE));
    stage.redraw();
  });
  return null;
}
