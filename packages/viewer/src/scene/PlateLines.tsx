import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, type Material } from 'three';
import type { PlanLines } from '../buffers/plan-lines.ts';

/** Line segments that move with the plate. */
export function PlateLines({ lines, material, order = 0 }: { lines: PlanLines; material: Material; order?: number }) {
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(lines.position, 3));
    made.setAttribute('field', new BufferAttribute(lines.field, 3));
    return made;
  }, [lines]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return <lineSegments geometry={geometry} material={material} renderOrder={order} frustumCulled={false} />;
}
