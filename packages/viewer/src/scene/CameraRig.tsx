import { OrbitControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type ComponentRef, useEffect, useLayoutEffect, useRef } from 'react';
import { PerspectiveCamera, Spherical, Vector3 } from 'three';
import { fitCamera, type Insets } from '../buffers/fit-camera.ts';
import { useView } from '../state/use-workbench.ts';
import { useStageFrame } from './stage-frame.ts';

/** From the head to the eye. Straight from above leans by a hair, so that +y is up on the screen. */
const DIRECTIONS = { perspective: [-0.2, -0.86, 1.02], above: [0, -1e-4, 1] } as const;
/** Vertical angle of view, degrees. So long a lens from above draws what is straight and parallel as such. */
const LENS = { perspective: 22, above: 2 } as const;
/** Room for the tools above and below, px; where the stage is narrow they stand in rows; under the head the legend, of one line where it is low. */
const TOOLS = { above: 58, below: 46, narrow: 710, low: 420, more: { above: 34, below: 54, low: 26 } };
/** Room beside the head, as a share. */
const BESIDE = 0.04;

function insetsOf({ width, height }: { readonly width: number; readonly height: number }): Insets {
  const more = width < TOOLS.narrow ? TOOLS.more : { above: 0, below: 0 };
  const share = (px: number): number => Math.min(0.28, px / height);
  return {
    left: BESIDE,
    right: BESIDE,
    top: share(TOOLS.above + more.above),
    bottom: Math.max(0.1, share(TOOLS.below + (height <= TOOLS.low ? TOOLS.more.low : TOOLS.more.below))),
  };
}

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
    const away = new Spherical();
    const moveEye = (change: (from: Vector3, to: Vector3) => void): void => {
      if (controls.current === null) return;
      moved.current = true;
      change(camera.position, controls.current.target);
      controls.current.update();
      invalidate();
    };
    stage.zoom = (factor) =>
      moveEye((eye, target) =>
        eye
          .sub(target)
          .multiplyScalar(1 / factor)
          .add(target),
      );
    stage.turn = (right, up) =>
      moveEye((eye, target) => {
        if (view === 'above') {
          const step = eye.distanceTo(target) * 0.4;
          const by = new Vector3(right * step, up * step, 0);
          eye.add(by);
          target.add(by);
          return;
        }
        const from = eye.clone().sub(target);
        // Polar about +z, which is up on the stage.
        away.setFromCartesianCoords(from.x, from.z, -from.y);
        away.theta += right * Math.PI;
        away.phi = Math.min(Math.PI - 0.05, Math.max(0.05, away.phi - up * Math.PI));
        from.setFromSpherical(away);
        eye.set(from.x, -from.z, from.y).add(target);
      });
  }, [stage, camera, gl, view, invalidate]);

  useLayoutEffect(() => {
    const wish = `${view} ${homeCalls}`;
    if (asked.current !== wish) moved.current = false;
    asked.current = wish;
    if (moved.current || !(camera instanceof PerspectiveCamera) || controls.current === null) return;
    camera.fov = LENS[view];
    const { position, target } = fitCamera(
      half,
      DIRECTIONS[view],
      camera.fov,
      size.width / size.height,
      insetsOf(size),
    );
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
      maxDistance={view === 'above' ? 60000 : 5000}
      screenSpacePanning
      onStart={() => {
        moved.current = true;
      }}
    />
  );
}
