import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry } from 'three';
import { lineMaterial } from './plate-material.ts';

interface FixedLinesProps {
  /** `[3 * nVertices]`, two vertices a segment, mm. */
  readonly points: Float32Array;
  readonly z: number;
  readonly colour: string;
  readonly opacity: number;
  readonly onTop?: boolean;
  readonly order: number;
}

const STILL = { value: 0 };

/** Line segments that do not move with the head. */
export function FixedLines({ points, z, colour, opacity, onTop = false, order }: FixedLinesProps) {
  const geometry = useMemo(
    () => new BufferGeometry().setAttribute('position', new BufferAttribute(points, 3)),
    [points],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  const material = useMemo(() => lineMaterial(STILL, { colour, opacity, onTop }), [colour, opacity, onTop]);
  useEffect(() => () => material.dispose(), [material]);
  return (
    <lineSegments
      geometry={geometry}
      material={material}
      position={[0, 0, z]}
      renderOrder={order}
      frustumCulled={false}
    />
  );
}
