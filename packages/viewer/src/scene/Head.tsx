import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { fieldSampler } from '../buffers/field-sampler.ts';
import { headLayers } from '../buffers/head-layers.ts';
import { isoStep } from '../buffers/iso-levels.ts';
import { layerSolid, rimEdges } from '../buffers/layer-solid.ts';
import { nodalSlopes } from '../buffers/nodal-field.ts';
import { edgeLines, ringLines, siteRings } from '../buffers/plan-lines.ts';
import type { Mesh } from '../solver-extras.ts';
import type { Solved } from '../state/run-store.ts';
import { shownCase } from '../state/shown-case.ts';
import { useView } from '../state/use-workbench.ts';
import { PlateLayer } from './PlateLayer.tsx';
import { PlateLines } from './PlateLines.tsx';
import type { Palette } from './palette.ts';
import { lineMaterial, type PlateUniforms, plateMaterial } from './plate-material.ts';
import { useStageFrame } from './stage-frame.ts';

/** Height of lines over the face they lie on, mm. */
const OVER_FACE = 0.01;

/** Body, frame and ribs as last solved, bent by the deviation of the case shown and painted with it. */
export function Head({ solved, uniforms, palette }: { solved: Solved; uniforms: PlateUniforms; palette: Palette }) {
  const { model, result } = solved;
  const { mesh, sites } = result;
  const { body, frame } = model;
  const stage = useStageFrame();
  const gl = useThree((three) => three.gl);
  const caseName = useView((view) => view.caseName);
  const values = shownCase(result, caseName).deviation;
  const top = body.thickness / 2;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts follow body, frame, sites and mesh, not the fasteners
  const parts = useMemo(
    () =>
      headLayers(model, mesh).map((layer) => {
        const rim = rimEdges(mesh, layer.triangles);
        const { part, triangles, bottom, top: upper } = layer;
        const solid = layerSolid(mesh, triangles, rim, bottom, upper);
        return { ...layer, key: `${part} ${bottom} ${upper}`, rim, solid };
      }),
    [body, frame, model.sites, mesh],
  );
  const field = useMemo(() => ({ values, slopes: nodalSlopes(mesh, values) }), [mesh, values]);
  const sampler = useMemo(() => fieldSampler(mesh, values), [mesh, values]);
  const outlines = useMemo(() => ringLines(siteRings(sites), sampler, top + OVER_FACE), [sites, sampler, top]);
  const rims = useMemo(
    () =>
      parts.map(({ key, part, rim, bottom, top: upper }) => ({
        key,
        behind: part === 'frame' && upper < top,
        upper: edgeLines(mesh, rim, values, upper),
        lower: edgeLines(mesh, rim, values, bottom),
        through: edgeLines(mesh, underBody(rim, parts[0].triangles, mesh), values, top + OVER_FACE),
      })),
    [parts, mesh, values, top],
  );

  const materials = useMemo(
    () => ({
      body: plateMaterial(uniforms, { base: palette.ceramic, side: palette.ceramicSide, painted: true }),
      frame: plateMaterial(uniforms, { base: palette.steel, side: palette.steel, painted: false }),
      line: lineMaterial(stage.scale, { colour: palette.line, opacity: palette.lineOpacity }),
      edge: lineMaterial(stage.scale, { colour: palette.line, opacity: palette.lineOpacity * 0.7 }),
      hidden: lineMaterial(stage.scale, { colour: palette.hidden, opacity: 0.16 }),
    }),
    [uniforms, palette, stage],
  );
  useEffect(
    () => () => {
      for (const material of Object.values(materials)) material.dispose();
    },
    [materials],
  );

  useLayoutEffect(() => {
    stage.sampler = sampler;
    const { limit, isoStep: step, pixelRatio, siteGrid, siteShape } = uniforms;
    limit.value = model.limits.bow;
    step.value = isoStep(model.limits.bow);
    pixelRatio.value = gl.getPixelRatio();
    const first = sites.at(-1 * model.sites.columns) ?? sites[0];
    const { columns, rows } = model.sites;
    const pitch = ([0, 1] as const).map((axis) => {
      const span = Math.max(...sites.map(({ centre }) => centre[axis])) - first.centre[axis];
      return span > 0 ? span / ((axis === 0 ? columns : rows) - 1) : 1;
    });
    siteGrid.value.set(first.centre[0], first.centre[1], pitch[0], pitch[1]);
    siteShape.value.set(columns, rows, first.field[0] / 2, first.field[1] / 2);
    stage.redraw();
  }, [stage, uniforms, sampler, model, sites, gl]);

  return (
    <group>
      {parts.map(({ key, part, solid }) => (
        <PlateLayer key={key} solid={solid} field={field} material={materials[part]} />
      ))}
      {rims.map(({ key, behind, upper, lower, through }) => (
        <group key={key}>
          <PlateLines lines={upper} material={materials.edge} />
          <PlateLines lines={lower} material={materials.edge} />
          {behind && <PlateLines lines={through} material={materials.hidden} />}
        </group>
      ))}
      <PlateLines lines={outlines} material={materials.line} order={1} />
    </group>
  );
}

/** The edges whose ends both belong to the body: what it hides of a part under it. */
function underBody(edges: Uint32Array, body: Uint32Array, { x, triangles }: Mesh): Uint32Array {
  const ofBody = new Uint8Array(x.length);
  for (const t of body) for (let k = 0; k < 3; k++) ofBody[triangles[3 * t + k]] = 1;
  return edges.filter((_, i) => ofBody[edges[i & ~1]] && ofBody[edges[i | 1]]);
}
