import {
  type CaseResult,
  type Fastener,
  type FastenerResult,
  type HeadModel,
  type HeadResult,
  type Site,
  screws,
} from '@flathead/solver';
import { type KeepOutGap, nearestKeepOut } from '../state/keep-out-gap.ts';

/** A value and the case that it is worst in. */
export interface InCase {
  readonly value: number;
  readonly caseName: string;
}

/** What a board designer and a reviewer ask of one fastener, over all load cases. */
export interface FastenerSummary {
  readonly fastener: Fastener;
  /** N/mm; `null` = rigid. */
  readonly stiffness: number | null;
  /** Largest force that holds the head back, N; negative where it only ever pushes. */
  readonly holdsBack: InCase;
  /** Whether it lets go in a case. */
  readonly letsGo: boolean;
  /** Least clamp force left, N, and most of proof load and thread used; `null` without a preload or where unknown. */
  readonly clampLeft: InCase | null;
  readonly proof: InCase | null;
  readonly thread: InCase | null;
  readonly opens: boolean;
  readonly keepOut: KeepOutGap | null;
  /** From the edge of its head to the nearest probe field, mm. */
  readonly site: { readonly name: string; readonly gap: number };
}

/** Every fastener with its worst cases and its distances. */
export function fastenerSummaries(model: HeadModel, { cases, sites }: HeadResult): FastenerSummary[] {
  return model.fasteners.map((fastener, i) => {
    const head = headDiameter(fastener);
    const read = (value: (result: FastenerResult) => number | null, most: boolean) => worst(cases, i, value, most);
    return {
      fastener,
      stiffness: cases[0].fasteners[i].stiffness,
      holdsBack: read(({ reaction }) => -reaction, true)!,
      letsGo: cases.some(({ fasteners }) => !fasteners[i].holds),
      clampLeft: read(({ joint }) => joint?.clampLeft.low ?? null, false),
      proof: read(({ joint }) => joint?.proofRatio ?? null, true),
      thread: read(({ joint }) => joint?.strippingRatio ?? null, true),
      opens: cases.some(({ fasteners }) => fasteners[i].joint?.opens),
      keepOut: nearestKeepOut(model.keepOuts, fastener.at, head),
      site: nearestSite(sites, fastener, head),
    };
  });
}

function worst(
  cases: readonly CaseResult[],
  index: number,
  value: (result: FastenerResult) => number | null,
  most: boolean,
): InCase | null {
  let found: InCase | null = null;
  for (const { name, fasteners } of cases) {
    const next = value(fasteners[index]);
    if (next === null || (found !== null && (most ? next <= found.value : next >= found.value))) continue;
    found = { value: next, caseName: name };
  }
  return found;
}

function nearestSite(sites: readonly Site[], { at: [x, y] }: Fastener, head: number): FastenerSummary['site'] {
  let nearest = { name: '', gap: Infinity };
  for (const { name, centre, field } of sites) {
    const [dx, dy] = [Math.abs(x - centre[0]) - field[0] / 2, Math.abs(y - centre[1]) - field[1] / 2];
    const gap = Math.hypot(Math.max(0, dx), Math.max(0, dy)) - head / 2;
    if (gap < nearest.gap) nearest = { name, gap };
  }
  return nearest;
}

/** As the solver's own remarks have it: the larger of screw head and bearing. */
function headDiameter({ screw, bearing }: Fastener): number {
  const size = screw !== undefined && Object.hasOwn(screws, screw) ? screws[screw].head : 0;
  return Math.max(size, bearing ?? 0);
}
