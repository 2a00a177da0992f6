import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, type Material } from 'three';
import { hangLines, type PlanLines } from '../buffers/plan-lines.ts';

interface PlateLinesProps {
  readonly lines: PlanLines;
  /** `[nNodes]` deviation, mm. */
  readonly values: Float64Array;
  readonly material: Material;
  readonly order?: number;
}

/** Line segments that move with the plate. A new field moves them in place. */
export function PlateLines({ lines, values, material, order = 0 }: PlateLinesProps) {
  const invalidate = useThree((three) => three.invalidate);
  const { geometry, motion } = useMemo(() => {
    const motion = new BufferAttribute(new Float32Array(lines.position.length), 3).setUsage(DynamicDrawUsage);
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(lines.position, 3));
    geometry.setAttribute('field', motion);
    return { geometry, motion };
  }, [lines]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useLayoutEffect(() => {
    if (motion.array instanceof Float32Array) hangLines(lines, values, motion.array);
    motion.needsUpdate = true;
    invalidate();
  }, [lines, values, motion, invalidate]);
  return <lineSegments geometry={geometry} material={material} renderOrder={order} frustumCulled={false} />;
}
