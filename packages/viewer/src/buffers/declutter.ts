/** A label on the stage: centre and size, px. */
export interface LabelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Those with more are kept. */
  readonly weight: number;
}

/** Which labels to show so that no two overlap; the weighty ones first. */
export function declutter(boxes: readonly LabelBox[]): boolean[] {
  const order = boxes.map((_, i) => i).sort((a, b) => boxes[b].weight - boxes[a].weight);
  const shown = boxes.map(() => false);
  const kept: LabelBox[] = [];
  for (const i of order) {
    const box = boxes[i];
    if (kept.some((other) => overlap(box, other))) continue;
    shown[i] = true;
    kept.push(box);
  }
  return shown;
}

function overlap(a: LabelBox, b: LabelBox): boolean {
  return Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2;
}
