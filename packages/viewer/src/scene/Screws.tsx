import type { Fastener } from '@flathead/solver';
import { useFrame } from '@react-three/fiber';
import { memo, useEffect, useMemo, useRef } from 'react';
import { BufferAttribute, BufferGeometry, type Group, type Material } from 'three';
import { prismSolid } from '../buffers/prism-solid.ts';
import { screwSize } from '../buffers/screw-size.ts';
import { seatHeight } from '../buffers/seat-height.ts';
import { useModel, usePointer } from '../state/use-workbench.ts';
import type { Palette } from './palette.ts';
import { type PlateUniforms, plateMaterial } from './plate-material.ts';
import { deviationAt, useStageFrame } from './stage-frame.ts';

const ROUND = 32;
const SOCKET = 6;
/** Depth drawn for the socket: a dark lid, mm. */
const LID = 0.05;

/** All fasteners of the present model, the dragged one in the accent colour. */
export function Screws({ uniforms, palette }: { uniforms: PlateUniforms; palette: Palette }) {
  const model = useModel((model) => model);
  const dragged = usePointer((pointer) => pointer.dragged);
  const seats = useMemo(() => model.fasteners.map(({ at }) => seatHeight(model, at)), [model]);
  const materials = useMemo(() => {
    const solid = (base: string, side: string) => plateMaterial(uniforms, { base, side, painted: false });
    return {
      screw: solid(palette.screw, palette.screw),
      dragged: solid(palette.accent, palette.accent),
      socket: solid(palette.socket, palette.socket),
    };
  }, [uniforms, palette]);
  useEffect(
    () => () => {
      for (const material of Object.values(materials)) material.dispose();
    },
    [materials],
  );
  return model.fasteners.map((fastener, i) => (
    <Screw
      // biome-ignore lint/suspicious/noArrayIndexKey: a fastener is its place in the list
      key={i}
      fastener={fastener}
      z={seats[i]}
      head={`fastener ${i}` === dragged ? materials.dragged : materials.screw}
      socket={materials.socket}
    />
  ));
}

/** A socket head screw on its seat, moving with the head. */
const Screw = memo(function Screw(props: { fastener: Fastener; z: number; head: Material; socket: Material }) {
  const { fastener, z } = props;
  const stage = useStageFrame();
  const group = useRef<Group>(null);
  const { head, height } = screwSize(fastener);
  const round = usePrism(head / 2, height, ROUND, 0);
  const socket = usePrism(height * 0.46, LID, SOCKET, height);
  useFrame(() => {
    const [x, y] = fastener.at;
    group.current?.position.set(x, y, z + stage.scale.value * deviationAt(stage, [x, y]));
  });
  return (
    <group ref={group}>
      <mesh geometry={round} material={props.head} />
      <mesh geometry={socket} material={props.socket} />
    </group>
  );
});

function usePrism(radius: number, height: number, sides: number, bottom: number): BufferGeometry {
  const geometry = useMemo(() => {
    const { position, normal, index } = prismSolid(radius, height, sides, bottom);
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(position, 3));
    made.setAttribute('normal', new BufferAttribute(normal, 3));
    made.setIndex(new BufferAttribute(index, 1));
    return made;
  }, [radius, height, sides, bottom]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}
