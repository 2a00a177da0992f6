import type { HeadModel, HeadResult } from '@flathead/solver';
import { useMemo } from 'react';
import { locatorOf } from '../buffers/field-sampler.ts';
import { type HeadLayer, headLayers } from '../buffers/head-layers.ts';
import { type LayerSolid, layerSolid, rimEdges } from '../buffers/layer-solid.ts';
import { edgeLines, edgesWithin, type PlanLines, ringLines, siteRings } from '../buffers/plan-lines.ts';

/** Height of lines over the face they lie on, mm. */
const OVER_FACE = 0.01;

/** A layer of the head with all that is drawn of it. */
export interface HeadPart {
  readonly key: string;
  readonly part: HeadLayer['part'];
  readonly solid: LayerSolid;
  /** Its upper and lower edges. */
  readonly edges: readonly PlanLines[];
  /** Its edges under the body, drawn on the body's face; `null` when nothing hides them. */
  readonly hidden: PlanLines | null;
}

/** Parts and site outlines of a head. They follow body, frame, sites and mesh; moving a fastener leaves them alone. */
export function useHeadParts(
  model: HeadModel,
  { mesh, sites }: HeadResult,
): { readonly parts: readonly HeadPart[]; readonly outlines: PlanLines } {
  const { body, frame, sites: pattern } = model;
  const face = body.thickness / 2;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the model, only body, frame and sites make the parts
  const parts = useMemo(() => {
    const layers = headLayers(model, mesh);
    return layers.map(({ part, triangles, bottom, top }): HeadPart => {
      const rim = rimEdges(mesh, triangles);
      const under = part === 'frame' && top < face;
      return {
        key: `${part} ${bottom} ${top}`,
        part,
        solid: layerSolid(mesh, triangles, rim, bottom, top),
        edges: [edgeLines(mesh, rim, top), edgeLines(mesh, rim, bottom)],
        hidden: under ? edgeLines(mesh, edgesWithin(rim, mesh, layers[0].triangles), face + OVER_FACE) : null,
      };
    });
  }, [body, frame, pattern, mesh]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each answer brings its own copy of the same sites
  const outlines = useMemo(() => ringLines(siteRings(sites), locatorOf(mesh), face + OVER_FACE), [pattern, mesh, face]);
  return { parts, outlines };
}
