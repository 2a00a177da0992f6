import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, type Material } from 'three';
import type { LayerSolid } from '../buffers/layer-solid.ts';
import { gatherField } from '../buffers/nodal-field.ts';

/** A nodal field of the plate, ready to be put on its parts. */
export interface NodalField {
  readonly values: Float64Array;
  readonly slopes: Float32Array;
}

/** One solid part of the head. A new field moves it in place. */
export function PlateLayer({ solid, field, material }: { solid: LayerSolid; field: NodalField; material: Material }) {
  const invalidate = useThree((three) => three.invalidate);
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(solid.position, 3));
    made.setAttribute('normal', new BufferAttribute(solid.normal, 3));
    made.setIndex(new BufferAttribute(solid.index, 1));
    const motion = new BufferAttribute(new Float32Array(3 * solid.node.length), 3);
    made.setAttribute('field', motion.setUsage(DynamicDrawUsage));
    return made;
  }, [solid]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useLayoutEffect(() => {
    const motion = geometry.getAttribute('field');
    if (!(motion instanceof BufferAttribute) || !(motion.array instanceof Float32Array)) return;
    gatherField(solid.node, field.values, field.slopes, motion.array);
    motion.needsUpdate = true;
    invalidate();
  }, [geometry, solid, field, invalidate]);
  return <mesh geometry={geometry} material={material} frustumCulled={false} />;
}
