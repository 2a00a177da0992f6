import { useFrame } from '@react-three/fiber';
import { type Camera, Vector3 } from 'three';
import { declutter } from '../buffers/declutter.ts';
import { deviationAt, type StageFrame, type StageLabel, useStageFrame } from './stage-frame.ts';

/** Sizes that labels take, px: with the name of the site, and the value alone. */
const FULL = 74;
const SHORT = 41;
const HEIGHT = 19;
/** From a grip to its card, and from a card to the edge of the stage, px. */
const BESIDE = 26;
const MARGIN = 8;

const point = new Vector3();

/** Puts the labels over their points with every picture, and thins out those of sites where they would overlap. */
export function LabelProjector() {
  const stage = useStageFrame();
  useFrame(({ camera, size }) => {
    const sites: { label: StageLabel; x: number; y: number }[] = [];
    for (const label of stage.labels.values()) {
      const [x, y] = onPage(stage, camera, size, label);
      if (label.kind === 'card') placeCard(label.element, x, y, size);
      else label.element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
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

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Place on the stage of a point that follows the head unless it is still, px. */
export function onPage(
  stage: StageFrame,
  camera: Camera,
  { width, height }: Size,
  { at, z, still = false }: Pick<StageLabel, 'at' | 'z' | 'still'>,
): readonly [number, number] {
  point.set(at[0], at[1], still ? z : z + stage.scale.value * deviationAt(stage, at));
  point.project(camera);
  return [((point.x + 1) / 2) * width, ((1 - point.y) / 2) * height];
}

/** Beside its point, on the side away from the middle of the stage; where there is no room, under or over it. */
function placeCard(element: HTMLElement, x: number, y: number, { width, height }: Size): void {
  const { offsetWidth: w, offsetHeight: h } = element;
  const outward = x > width / 2 ? x + BESIDE : x - BESIDE - w;
  const left = Math.min(Math.max(MARGIN, outward), Math.max(MARGIN, width - w - MARGIN));
  const covers = left < x + BESIDE / 2 && left + w > x - BESIDE / 2;
  const under = y + BESIDE + h + MARGIN <= height ? y + BESIDE : y - BESIDE - h;
  const top = covers ? under : Math.min(y - h / 2, height - h - MARGIN);
  element.style.transform = `translate(${left.toFixed(1)}px, ${Math.max(MARGIN, top).toFixed(1)}px)`;
}
