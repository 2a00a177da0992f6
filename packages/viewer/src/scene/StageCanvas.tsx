import type { HeadModel } from '@flathead/solver';
import { useComputedColorScheme } from '@mantine/core';
import { Canvas } from '@react-three/fiber';
import { useEffect, useMemo, useState } from 'react';
import { boardHeight } from '../buffers/seat-height.ts';
import { boxOf, cornerOf } from '../state/shape-box.ts';
import { useModel } from '../state/use-workbench.ts';
import { Board } from './Board.tsx';
import { CameraRig } from './CameraRig.tsx';
import { Head } from './Head.tsx';
import { KeepOuts } from './KeepOuts.tsx';
import { LabelProjector } from './LabelProjector.tsx';
import { OverlayProjector } from './OverlayProjector.tsx';
import { PALETTES } from './palette.ts';
import { plateUniforms } from './plate-material.ts';
import { ScaleDriver } from './ScaleDriver.tsx';
import { Screws } from './Screws.tsx';
import { Seats } from './Seats.tsx';
import styles from './stage.module.css';
import { StageFrameContext, useStageFrame } from './stage-frame.ts';
import { webglRenderer } from './webgl.ts';

const CAMERA = {
  fov: 22,
  up: [0, 0, 1] as [number, number, number],
  position: [-80, -260, 240] as [number, number, number],
};

/** What is drawn in three dimensions. Draws when something changed, not otherwise. */
export function StageCanvas() {
  const stage = useStageFrame();
  const palette = PALETTES[useComputedColorScheme('light')];
  const hx = useModel((model) => reach(model, 0));
  const hy = useModel((model) => reach(model, 1));
  const corner = useModel(({ body, frame }) => cornerOf(frame ? frame.outer : body.outline));
  const floor = useModel(boardHeight);
  const top = useModel(({ body }) => body.thickness / 2);
  const uniforms = useMemo(() => plateUniforms(stage.scale), [stage]);
  useEffect(() => () => uniforms.ramp.value.dispose(), [uniforms]);
  // Smooth edges take a renderer in software four times the pixels, and a drag its pace.
  const [antialias] = useState(() => webglRenderer() !== 'software');
  const half = useMemo(() => [hx, hy, Math.max(top, -floor)] as const, [hx, hy, top, floor]);
  return (
    <Canvas
      className={styles.canvas}
      frameloop="demand"
      flat
      dpr={[1, 2]}
      // Only its size matters; a field that scrolls under the pointer would have it measured with every number shown.
      resize={{ scroll: false }}
      camera={CAMERA}
      gl={{ antialias, alpha: true }}
      onCreated={({ gl }) => {
        // Asking the driver for errors of a shader waits for its compiler.
        gl.debug.checkShaderErrors = import.meta.env.DEV;
      }}
      fallback={<p>The three-dimensional view is not available here.</p>}
    >
      <StageFrameContext value={stage}>
        <CameraRig half={half} />
        <Board hx={hx} hy={hy} corner={corner} z={floor} palette={palette} />
        <Head uniforms={uniforms} palette={palette} />
        <KeepOuts palette={palette} />
        <Seats palette={palette} />
        <Screws uniforms={uniforms} palette={palette} />
        <ScaleDriver />
        <LabelProjector />
        <OverlayProjector />
      </StageFrameContext>
    </Canvas>
  );
}

/** Half extent of body and frame along an axis, mm. */
function reach({ body, frame }: HeadModel, axis: 0 | 1): number {
  return Math.max(boxOf(body.outline)[axis], frame ? boxOf(frame.outer)[axis] : 0) / 2;
}
