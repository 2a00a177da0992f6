import { addAfterEffect, useThree } from '@react-three/fiber';
import { useEffect } from 'react';

/** Marks the canvas with `data-drawn` once a frame with an answer on it has been drawn. */
export function DrawnMark() {
  const canvas = useThree(({ gl }) => gl.domElement);
  const invalidate = useThree((three) => three.invalidate);
  useEffect(() => {
    const stop = addAfterEffect(() => {
      canvas.dataset.drawn = 'true';
      stop();
    });
    invalidate();
    return stop;
  }, [canvas, invalidate]);
  return null;
}
