import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { fieldSampler } from '../buffers/field-sampler.ts';
import { isoStep } from '../buffers/iso-levels.ts';
import { nodalSlopes } from '../buffers/nodal-field.ts';
import type { Solved } from '../state/run-store.ts';
import { shownCase } from '../state/shown-case.ts';
import { useQuantity } from '../state/use-quantity.ts';
import { useRun, useView } from '../state/use-workbench.ts';
import { DrawnMark } from './DrawnMark.tsx';
import { PlateLayer } from './PlateLayer.tsx';
import { PlateLines } from './PlateLines.tsx';
import type { Palette } from './palette.ts';
import { lineMaterial, type PlateUniforms, plateMaterial, setScale, setSites } from './plate-material.ts';
import { useStageFrame } from './stage-frame.ts';
import { useHeadParts } from './use-head-parts.ts';

interface HeadProps {
  readonly uniforms: PlateUniforms;
  readonly palette: Palette;
}

/** The head as last solved; nothing before the first answer. */
export function Head(props: HeadProps) {
  const solved = useRun((run) => run.solved);
  if (solved === null) return null;
  return (
    <>
      <SolvedHead solved={solved} {...props} />
      <DrawnMark />
    </>
  );
}

/**
 * Body, frame and ribs as last solved, bent by the deviation of the case shown and painted with that or the tension.
 *
 * The canvas counts in `data-fields` how often the renderer was given something new to draw on them.
 */
function SolvedHead({ solved, uniforms, palette }: HeadProps & { readonly solved: Solved }) {
  const { model, result } = solved;
  const { mesh, sites } = result;
  const stage = useStageFrame();
  const gl = useThree((three) => three.gl);
  const caseName = useView((view) => view.caseName);
  const values = shownCase(result, caseName).deviation;
  const { quantity, tension, contact, scale } = useQuantity();
  const signed = useView((view) => view.signed) && quantity === 'deviation';
  const painted = { deviation: values, tension: tension?.bodyTension, contact: contact?.lost }[quantity];
  const slopes = useMemo(() => nodalSlopes(mesh, values), [mesh, values]);
  const field = useMemo(
    () => ({ values, slopes, paint: painted ?? new Float64Array(values.length) }),
    [values, slopes, painted],
  );
  const { parts, outlines } = useHeadParts(model, result);

  const materials = useMemo(() => {
    const line = (opacity: number) => lineMaterial(stage.scale, { colour: palette.line, opacity });
    return {
      body: plateMaterial(uniforms, { base: palette.ceramic, side: palette.ceramicSide, painted: true }),
      frame: plateMaterial(uniforms, { base: palette.steel, side: palette.steel, painted: false }),
      outline: line(palette.lineOpacity),
      edge: line(palette.lineOpacity * 0.7),
      hidden: line(0.16),
    };
  }, [uniforms, palette, stage]);
  useEffect(
    () => () => {
      for (const material of Object.values(materials)) material.dispose();
    },
    [materials],
  );

  useLayoutEffect(() => {
    stage.sampler = fieldSampler(mesh, values);
    setScale(uniforms, scale);
    uniforms.isoStep.value = isoStep(scale.limit ?? scale.top);
    uniforms.everywhere.value = quantity === 'tension' ? 1 : 0;
    uniforms.bothWays.value = quantity === 'contact' ? -1 : signed ? 1 : 0;
    uniforms.pixelRatio.value = gl.getPixelRatio();
    setSites(uniforms, sites);
    const { dataset } = gl.domElement;
    dataset.fields = String(Number(dataset.fields ?? 0) + 1);
    stage.redraw();
  }, [stage, uniforms, mesh, values, scale, quantity, signed, sites, gl]);

  return (
    <group>
      {parts.map(({ key, part, solid, edges, hidden }) => (
        <group key={key}>
          <PlateLayer solid={solid} field={field} material={materials[part]} />
          <PlateLines lines={edges[0]} values={values} material={materials.edge} />
          <PlateLines lines={edges[1]} values={values} material={materials.edge} />
          {hidden && <PlateLines lines={hidden} values={values} material={materials.hidden} />}
        </group>
      ))}
      <PlateLines lines={outlines} values={values} material={materials.outline} order={1} />
    </group>
  );
}
