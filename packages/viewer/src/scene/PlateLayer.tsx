import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, type Material } from 'three';
import type { LayerSolid } from '../buffers/layer-solid.ts';
import { gatherField } from '../buffers/nodal-field.ts';

/** A nodal field of the plate, ready to be put on its parts. */
export interface NodalField {
  readonly values: Float64Array;
  readonly slopes: Float32Array;
  /** What the colours show. */
  readonly paint: Float64Array;
}

/** One solid part of the head. A new field moves it in place. */
export function PlateLayer({ solid, field, material }: { solid: LayerSolid; field: NodalField; material: Material }) {
  const invalidate = useThree((three) => three.invalidate);
  const { geometry, motion } = useMemo(() => {
    const motion = new BufferAttribute(new Float32Array(4 * solid.node.length), 4).setUsage(DynamicDrawUsage);
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(solid.position, 3));
    geometry.setAttribute('normal', new BufferAttribute(solid.normal, 3));
    geometry.setAttribute('field', motion);
    geometry.setIndex(new BufferAttribute(solid.index, 1));
    return { geometry, motion };
  }, [solid]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useLayoutEffect(() => {
    const { values, slopes, paint } = field;
    if (motion.array instanceof Float32Array) gatherField(solid.node, values, slopes, paint, motion.array);
    motion.needsUpdate = true;
    invalidate();
  }, [solid, field, motion, invalidate]);
  return <mesh geometry={geometry} material={material} frustumCulled={false} />;
}
