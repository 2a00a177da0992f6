import { useFrame } from '@react-three/fiber';
import { Vector3 } from 'three';
import { declutter } from '../buffers/declutter.ts';
import { deviationAt, type StageLabel, useStageFrame } from './stage-frame.ts';

/** Sizes that labels take, px: with the name of the site, and the value alone. */
const FULL = 74;
const SHORT = 41;
const HEIGHT = 19;

const point = new Vector3();

/** Puts the labels over their points with every picture, and thins out those of sites where they would overlap. */
export function LabelProjector() {
  const stage = useStageFrame();
  useFrame(({ camera, size }) => {
    const sites: { label: StageLabel; x: number; y: number }[] = [];
    for (const label of stage.labels.values()) {
      point.set(label.at[0], label.at[1], label.z + stage.scale.value * deviationAt(stage, label.at));
      point.project(camera);
      const x = ((point.x + 1) / 2) * size.width;
      const y = ((1 - point.y) / 2) * size.height;
      label.element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
      if (label.kind === 'site') sites.push({ label, x, y });
    }
    const boxes = (width: number) =>
      sites.map(({ label, x, y }) => ({ x, y, width, height: HEIGHT, weight: label.weight }));
    const all = declutter(boxes(FULL));
    const full = all.every(Boolean);
    const shown = full ? all : declutter(boxes(SHORT));
    sites.forEach(({ label }, i) => {
      label.element.dataset.form = shown[i] ? (full ? 'full' : 'short') : 'none';
    });
  });
  return null;
}
