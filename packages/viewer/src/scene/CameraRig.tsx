import { OrbitControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type ComponentRef, useEffect, useLayoutEffect, useRef } from 'react';
import { PerspectiveCamera } from 'three';
import { fitCamera } from '../buffers/fit-camera.ts';
import { useView } from '../state/use-workbench.ts';
import { useStageFrame } from './stage-frame.ts';

/** From the head to the eye. Straight from above leans by a hair, so that +y is up on the screen. */
const DIRECTIONS = { perspective: [-0.2, -0.86, 1.02], above: [0, -1e-4, 1] } as const;
/** Room for the overlays. */
const INSETS = {
  perspective: { left: 0.035, right: 0.035, top: 0.1, bottom: 0.14 },
  above: { left: 0.04, right: 0.04, top: 0.11, bottom: 0.15 },
};

/** Orbit, pan and zoom; goes home when asked, and with the size of stage and head until the user has moved it. */
export function CameraRig({ half }: { half: readonly [number, number, number] }) {
  const stage = useStageFrame();
  const { camera, size, gl, invalidate } = useThree();
  const view = useView((state) => state.view);
  const homeCalls = useView((state) => state.homeCalls);
  const controls = useRef<ComponentRef<typeof OrbitControls>>(null);
  const moved = useRef(false);
  const asked = useRef('');

  useEffect(() => {
    stage.camera = camera;
    stage.canvas = gl.domElement;
    stage.redraw = invalidate;
  }, [stage, camera, gl, invalidate]);

  useLayoutEffect(() => {
    const wish = `${view} ${homeCalls}`;
    if (asked.current !== wish) moved.current = false;
    asked.current = wish;
    if (moved.current || !(camera instanceof PerspectiveCamera) || controls.current === null) return;
    const { position, target } = fitCamera(half, DIRECTIONS[view], camera.fov, size.width / size.height, INSETS[view]);
    const distance = Math.hypot(...position.map((p, axis) => p - target[axis]));
    camera.near = distance / 50;
    camera.far = distance * 20;
    camera.position.set(...position);
    camera.updateProjectionMatrix();
    controls.current.target.set(...target);
    controls.current.update();
    invalidate();
  }, [half, view, homeCalls, camera, size, invalidate]);

  return (
    <OrbitControls
      ref={controls}
      makeDefault
      enableDamping={false}
      enableRotate={view === 'perspective'}
      minDistance={5}
      maxDistance={5000}
      screenSpacePanning
      onStart={() => {
        moved.current = true;
      }}
    />
  );
}
