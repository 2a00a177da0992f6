import { type Box, overlapOf } from './least-covering.ts';

/** A label on the stage: centre and size, px. */
export interface LabelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Those with more are kept. */
  readonly weight: number;
}

/** Which labels to show so that no two overlap, nor one what is taken; the weighty ones first. */
export function declutter(boxes: readonly LabelBox[], taken: readonly Box[] = []): boolean[] {
  const order = boxes.map((_, i) => i).sort((a, b) => boxes[b].weight - boxes[a].weight);
  const shown = boxes.map(() => false);
  const kept: Box[] = [...taken];
  for (const i of order) {
    const box = boxAbout(boxes[i]);
    if (kept.some((other) => overlapOf(box, other) > 0)) continue;
    shown[i] = true;
    kept.push(box);
  }
  return shown;
}

export function boxAbout({ x, y, width, height }: Omit<LabelBox, 'weight'>): Box {
  return { left: x - width / 2, top: y - height / 2, width, height };
}
