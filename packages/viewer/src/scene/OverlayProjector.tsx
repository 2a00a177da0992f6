import { useFrame } from '@react-three/fiber';
import { onPage } from './LabelProjector.tsx';
import { type StageArrow, useStageFrame } from './stage-frame.ts';

/** Arrows seen shorter than this, px, are drawn as seen from their end. */
const END_ON = 7;

/** Draws the lines and arrows that lie over the picture, with every picture. */
export function OverlayProjector() {
  const stage = useStageFrame();
  useFrame(({ camera, size }) => {
    for (const { element, runs, z, still = false } of stage.paths.values())
      element.setAttribute(
        'd',
        runs
          .map((run) =>
            run.map((at, i) => `${i === 0 ? 'M' : 'L'}${text(onPage(stage, camera, size, { at, z, still }))}`).join(''),
          )
          .join(''),
      );
    for (const arrow of stage.arrows.values()) {
      const foot = onPage(stage, camera, size, arrow);
      const head = onPage(stage, camera, size, { ...arrow, z: arrow.z + arrow.length });
      if (arrow.endOn) draw(arrow, foot, foot);
      else draw(arrow, arrow.down ? head : foot, arrow.down ? foot : head);
    }
  });
  return null;
}

type Place = readonly [number, number];

/** From its tail to its tip; end-on as a ring with the cross of its feathers, or the dot of its tip. */
function draw({ shaft, tip, length, down, endOn }: StageArrow, from: Place, to: Place) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const seen = Math.hypot(dx, dy);
  if (endOn || seen < END_ON) {
    const r = 6 + 0.55 * length;
    const ring = `M${text([to[0] - r, to[1]])}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
    const d = r * Math.SQRT1_2;
    const cross = `M${text([to[0] - d, to[1] - d])}l${2 * d} ${2 * d}M${text([to[0] + d, to[1] - d])}l${-2 * d} ${2 * d}`;
    shaft.setAttribute('d', down ? ring + cross : ring);
    tip.setAttribute('d', down ? '' : `M${text([to[0] - 3, to[1]])}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0z`);
    return;
  }
  const [ux, uy] = [dx / seen, dy / seen];
  const size = Math.min(9, seen * 0.6);
  const neck: readonly [number, number] = [to[0] - ux * size, to[1] - uy * size];
  const wing = (sense: number): readonly [number, number] => [
    neck[0] - sense * uy * size * 0.5,
    neck[1] + sense * ux * size * 0.5,
  ];
  shaft.setAttribute('d', `M${text(from)}L${text(neck)}`);
  tip.setAttribute('d', `M${text(to)}L${text(wing(1))}L${text(wing(-1))}z`);
}

function text([x, y]: readonly [number, number]): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
