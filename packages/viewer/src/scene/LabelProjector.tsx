import { useFrame } from '@react-three/fiber';
import { type Camera, Vector3 } from 'three';
import { declutter } from '../buffers/declutter.ts';
import { type Box, leastCovering } from '../buffers/least-covering.ts';
import { deviationAt, type StageFrame, type StageLabel, useStageFrame } from './stage-frame.ts';

/** Sizes that labels of sites take, px: with the name of the site, the value alone, without its plus, and with fewer digits. */
const FORMS = [
  { form: 'full', width: 74, height: 19 },
  { form: 'short', width: 41, height: 17 },
  { form: 'brief', width: 31, height: 15 },
  { form: 'least', width: 20, height: 13 },
] as const;
/** In the last form the worst site keeps its name and digits, above its point where they take no room of its neighbours, px. */
const WORST = { width: 48, height: 13, above: 20 };
/** From a grip to its card, and from a card to the edge of the stage, px. */
const GAPS = { beside: 38, edge: 8 };

const point = new Vector3();

/** Puts the labels over their points with every picture; those of sites in the longest form in which all have room. */
export function LabelProjector() {
  const stage = useStageFrame();
  useFrame(({ camera, size }) => {
    const sites: { label: StageLabel; x: number; y: number }[] = [];
    let card: { label: StageLabel; x: number; y: number } | null = null;
    for (const label of stage.labels.values()) {
      if (label.element.dataset.placed === undefined) label.element.dataset.placed = 'true';
      const [x, y] = onPage(stage, camera, size, label);
      if (label.kind === 'card') card = { label, x, y };
      else put(label.element, x, y);
      if (label.kind === 'site') sites.push({ label, x, y });
    }
    const tries = FORMS.map(({ form, width, height }) => ({
      form,
      shown: declutter(
        sites.map(({ label: { element, weight }, x, y }) =>
          form === 'least' && element.dataset.worst !== undefined
            ? { x, y: y - WORST.above, width: WORST.width, height: WORST.height, weight }
            : { x, y, width, height, weight },
        ),
      ),
    }));
    const { form, shown } = tries.find((given) => given.shown.every(Boolean)) ?? tries[FORMS.length - 1];
    sites.forEach(({ label: { element }, x, y }, i) => {
      element.dataset.form = shown[i] ? form : 'none';
      if (form === 'least' && element.dataset.worst !== undefined) put(element, x, y - WORST.above);
    });
    if (card !== null) {
      const { element } = card.label;
      const own = { width: element.offsetWidth, height: element.offsetHeight };
      const [left, top] = leastCovering([card.x, card.y], own, size, takenBoxes(stage), GAPS);
      element.style.transform = `translate(${left.toFixed(1)}px, ${top.toFixed(1)}px)`;
    }
  });
  return null;
}

/** Puts the middle of a label over a place of the stage, px. */
function put(element: HTMLElement, x: number, y: number): void {
  element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
}

/** Boxes of all labels in sight but the card, px from the upper left corner of the stage. */
export function takenBoxes({ labels, canvas }: StageFrame): Box[] {
  if (canvas === null) return [];
  const corner = canvas.getBoundingClientRect();
  return [...labels.values()].flatMap(({ element, kind }): Box[] => {
    if (kind === 'card' || element.dataset.form === 'none') return [];
    // A grip is a ring about its point; what is read there is the text beside it.
    const text = kind === 'grip' || kind === 'seat' ? element.firstElementChild : element;
    if (text === null) return [];
    const { left, top, width, height } = text.getBoundingClientRect();
    return [{ left: left - corner.left, top: top - corner.top, width, height }];
  });
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
