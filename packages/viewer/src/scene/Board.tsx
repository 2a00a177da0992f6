import { useEffect, useMemo } from 'react';
import { ShaderMaterial, Vector2 } from 'three';
import { FixedLines } from './FixedLines.tsx';
import type { Palette } from './palette.ts';

const GRID = 10;
/** Squares of the grid shown around the head. */
const AROUND = 2;

interface BoardProps {
  /** Half extents of the head and the radius of its corners, mm. */
  readonly hx: number;
  readonly hy: number;
  readonly corner: number;
  readonly z: number;
  readonly palette: Palette;
}

/** The board the head is screwed to: a 10 mm grid, and the shadow of the head on it. */
export function Board({ hx, hy, corner, z, palette }: BoardProps) {
  const grid = useMemo(() => {
    const reach = [hx, hy].map((extent) => (Math.ceil(extent / GRID) + AROUND) * GRID);
    const points: number[] = [];
    for (let x = -reach[0]; x <= reach[0]; x += GRID) points.push(x, -reach[1], 0, x, reach[1], 0);
    for (let y = -reach[1]; y <= reach[1]; y += GRID) points.push(-reach[0], y, 0, reach[0], y, 0);
    return Float32Array.from(points);
  }, [hx, hy]);
  const soft = 0.35 * Math.min(hx, hy);
  const shadow = useMemo(() => shadowMaterial([hx, hy], corner, soft, palette.shadow), [hx, hy, corner, soft, palette]);
  useEffect(() => () => shadow.dispose(), [shadow]);
  return (
    <>
      <FixedLines points={grid} z={z} colour={palette.grid} opacity={0.55} order={-2} />
      <mesh material={shadow} position={[0, 0, z]} renderOrder={-1}>
        <planeGeometry args={[2 * (hx + 2 * soft), 2 * (hy + 2 * soft)]} />
      </mesh>
    </>
  );
}

/** Shadow of a box: dark under it, fading over `soft` mm, a little away from the light. */
function shadowMaterial(half: readonly [number, number], corner: number, soft: number, strength: number) {
  return new ShaderMaterial({
    vertexShader: /* glsl */ `
      varying vec2 p;
      void main() { p = position.xy; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }
    `,
    fragmentShader: /* glsl */ `
      uniform vec2 halfBox;
      uniform float strength;
      uniform float soft;
      uniform float corner;
      varying vec2 p;
      void main() {
        vec2 d = abs(p - vec2(0.12, -0.12) * soft) - halfBox + corner;
        float outside = length(max(d, 0.0)) + min(max(d.x, d.y), 0.0) - corner + 0.35 * soft;
        float fade = 1.0 - smoothstep(0.0, soft, outside);
        gl_FragColor = vec4(0.07, 0.08, 0.08, strength * fade * fade);
      }
    `,
    uniforms: {
      halfBox: { value: new Vector2(...half) },
      corner: { value: corner },
      strength: { value: strength },
      soft: { value: soft },
    },
    transparent: true,
    depthWrite: false,
  });
}
