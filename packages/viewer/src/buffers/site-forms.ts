import { boxAbout, declutter, type LabelBox } from './declutter.ts';
import { type Box, overlapOf } from './least-covering.ts';

/** Sizes that labels of sites take, px: with the name of the site, the value alone, without its plus, and with fewer digits. */
const FORMS = [
  { form: 'full', width: 74, height: 19 },
  { form: 'short', width: 41, height: 17 },
  { form: 'brief', width: 31, height: 15 },
  { form: 'least', width: 20, height: 13 },
] as const;
/** In the last form the worst site keeps its name and digits, px; beside its point where they take no room of its neighbours. */
const WORST = { width: 48, height: 13 } as const;
const BESIDE = [-20, -16, -14, 20, 16, 14, 0].flatMap((dy) =>
  [0, -8, 8, -14, 14, -20, 20].map((dx) => [dx, dy] as const),
);
/** In those between, its name stands on its value, px. */
const NAME = 12;

export interface SiteAnchor {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
  readonly worst: boolean;
}

export interface SiteForm {
  readonly form: (typeof FORMS)[number]['form'] | 'none';
  /** Of the middle of the label from its point, px. */
  readonly dx: number;
  readonly dy: number;
  /** What it takes of the stage; `null` where it is left out. */
  readonly box: Box | null;
}

/**
 * Labels of sites in the longest form in which all have room beside each other and beside what is never covered; where none
 * has, the weighty ones in the least. The worst site always has one.
 */
export function siteForms(sites: readonly SiteAnchor[], never: readonly Box[]): SiteForm[] {
  for (const { form, width, height } of FORMS) {
    const last = form === 'least';
    const boxes = sites.map(({ x, y, weight, worst }): LabelBox & Pick<SiteForm, 'dx' | 'dy'> => ({
      x,
      y,
      width,
      height,
      weight: worst ? Number.POSITIVE_INFINITY : weight,
      dx: 0,
      dy: 0,
    }));
    const worst = sites.findIndex((site) => site.worst);
    if (last && worst !== -1) {
      const others = [...never, ...boxes.filter((_, i) => i !== worst).map(boxAbout)];
      boxes[worst] = { ...boxes[worst], ...worstPlace(sites[worst], others) };
    }
    const shown = declutter(boxes, never);
    if (last && worst !== -1) shown[worst] = true;
    if (!last && !shown.every(Boolean)) continue;
    return boxes.map((box, i) => {
      const named = i === worst && (form === 'short' || form === 'brief') ? NAME : 0;
      return {
        form: shown[i] ? form : 'none',
        dx: box.dx,
        dy: box.dy,
        box: shown[i] ? boxAbout({ ...box, y: box.y - named / 2, height: box.height + named }) : null,
      };
    });
  }
  return [];
}

/** Where the label of the worst site covers least. */
function worstPlace({ x, y }: SiteAnchor, others: readonly Box[]) {
  const places = BESIDE.map(([dx, dy]) => ({ ...WORST, x: x + dx, y: y + dy, dx, dy }));
  const costs = places.map((place) => others.reduce((sum, other) => sum + overlapOf(boxAbout(place), other), 0));
  return places[costs.indexOf(Math.min(...costs))];
}
