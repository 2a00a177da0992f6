import { partEdges, partRegions } from './edge-distance.ts';
import { fastenerNames } from './fastener-names.ts';
import type { PlacedFastener } from './fasteners.ts';
import type { HeadModel } from './head-model.ts';
import type { HeadParts } from './parts.ts';
import { bodyMaterial } from './zones.ts';

/** What lies nearer to an edge than this, mm, is taken to reach it: the rise of arcs above their edges. */
const ROUNDING = 0.01;

/** What edgeRemarks needs of a compiled head. */
interface Compiled {
  readonly fasteners: readonly PlacedFastener[];
  readonly plan: { readonly parts: HeadParts };
}

/**
 * What the workshop will object to: fasteners whose bearing ends beyond the edge of the part it sits on, or lies across
 * the rim of the body from the frame, one sentence each, and those that go through a ceramic body with less than one
 * bearing diameter from their centre to its rim. The bow is right all the same, as far as the edge holds. The bearing
 * diameter is a rule of thumb; common practice, no source.
 */
export function edgeRemarks(model: HeadModel, { fasteners, plan: { parts } }: Compiled): string[] {
  const regions = partRegions(parts, model.frame?.side);
  const placed = fasteners.map((fastener) => ({ fastener, edges: partEdges(regions, fastener.at) }));
  const { kind } = bodyMaterial(model);
  const overhanging = placed.flatMap(({ fastener: { name, bearing }, edges }) => {
    const part = edges.upper;
    const over = part === null ? 0 : bearing / 2 - edges[part];
    return over > ROUNDING ? [{ name, part, bearing, over }] : [];
  });
  const across = placed.flatMap(({ fastener: { name, bearing }, edges: { body } }) => {
    const over = bearing / 2 + body;
    return body < 0 && over > ROUNDING
      ? [
          `Fastener ${name} sits across the rim of the body: its bearing of ${bearing} mm reaches ${millimetres(over)} over it.`,
        ]
      : [];
  });
  const near = placed.flatMap(({ fastener: { name, bearing }, edges: { body } }) =>
    kind === 'ceramic' && body >= 0 && body < bearing - ROUNDING ? [{ name, bearing, body }] : [],
  );
  return [
    ...overhanging.map(
      ({ name, part, bearing, over }) =>
        `Fastener ${name} sits on the edge of the ${part === 'body' && kind === 'ceramic' ? 'ceramic body' : part}: its bearing of ${bearing} mm overhangs by ${millimetres(over)}.`,
    ),
    ...across,
    ...nearRemark(near),
  ];
}

function nearRemark(near: readonly { readonly name: string; readonly bearing: number; readonly body: number }[]) {
  if (near.length === 0) return [];
  const least = near.reduce((a, b) => (b.body < a.body ? b : a));
  const [go, whose] = near.length === 1 ? ['goes', 'its centre'] : ['go', `the centre of ${least.name}`];
  return [
    `${fastenerNames(near.map(({ name }) => name))} ${go} through the ceramic body close to its rim: ${whose} is ${millimetres(least.body)} from it, where a rule of thumb asks for one bearing diameter, ${least.bearing} mm.`,
  ];
}

function millimetres(length: number): string {
  return `${length < 1 ? length.toFixed(2) : length.toFixed(1)} mm`;
}
