import { headParts } from '@flathead/solver';
import { useComputedColorScheme } from '@mantine/core';
import { memo, useId, useMemo } from 'react';
import { siteRings } from '../buffers/plan-lines.ts';
import type { PlanWindow } from '../buffers/plan-raster.ts';
import { planWindow, ringPath } from '../buffers/plan-window.ts';
import { PALETTES } from '../scene/palette.ts';
import { sameOutlines } from '../state/same-outlines.ts';
import { PlanMarks } from './PlanMarks.tsx';
import { differenceScale, type HeadInCase, type PlanQuantity, planPixels, planScale } from './plan-field.ts';
import styles from './plan-map.module.css';
import { pictureUrl } from './plan-picture.ts';

/** Largest rise of an arc over its edge, and free room around the head, mm. */
const CHORD = 0.02;
const MARGIN = 1;
/** Letters of an enlarged map over those of another. */
const ENLARGED = 1.35;
/** Pictures are no larger than this, whatever the page asks for, px. */
const MOST_PIXELS = 2400;

interface PlanMapProps {
  readonly head: HeadInCase;
  /** Another head whose field is taken off, for a map of the difference; `top` is where the ramp ends, mm. */
  readonly less?: { readonly head: HeadInCase; readonly top: number };
  readonly quantity?: PlanQuantity;
  /** Largest bow that the colours are to hold, mm; that of this head if left out. */
  readonly largest?: number;
  /** The piece of the plan shown, for maps that are to be of one scale; all of the head if left out. */
  readonly window?: PlanWindow;
  /** Of the picture on the page, px; it shrinks with the room it is given. */
  readonly width: number;
  /** What is drawn over the field: outlines alone, or everything with its name. */
  readonly detail?: 'outlines' | 'names';
  /** Pixels of the field for one of the page: about 3 for paper. */
  readonly pixelRatio?: number;
  /** Colours of paper whatever the page looks like. */
  readonly paper?: boolean;
  /** `sites`: the site area alone, enlarged; the whole head if left out. */
  readonly view?: 'sites';
  /** What it shows, for those who do not see it. */
  readonly label: string;
}

/** A solved head straight from above, drawn without WebGL at any size: its field in the colours of the stage, and lines. */
export const PlanMap = memo(function PlanMap(props: PlanMapProps) {
  const { head, less, quantity = 'deviation', largest, width, detail = 'names' } = props;
  const { pixelRatio = 2, paper = false, label, window: asked } = props;
  const scheme = useComputedColorScheme('light');
  const palette = PALETTES[paper ? 'light' : scheme];
  const { model, result, caseName } = head;
  const { body, frame, sites } = model;
  const enlarged = props.view === 'sites';
  const clip = useId();
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the model, only body, frame and sites make the parts
  const { own, bodyPath, framePath, partPaths } = useMemo(() => {
    const parts = headParts(model, result.sites, CHORD);
    return {
      own: enlarged ? planWindow(siteRings(result.sites), 2 * MARGIN) : planWindow(parts.plate, MARGIN),
      bodyPath: ringPath(parts.body),
      framePath: ringPath(parts.frame),
      partPaths: parts.frameParts.map(({ region }) => ringPath(region)),
    };
  }, [body, frame, sites, result, enlarged]);
  const window = asked ?? own;
  const top = less?.top;
  const other = less?.head;
  const picture = useMemo(() => {
    const columns = Math.round(Math.min(MOST_PIXELS, width * pixelRatio));
    const size = { columns, rows: Math.max(1, Math.round((columns * window.height) / window.width)) };
    const scale = top === undefined ? planScale({ model, result, caseName }, quantity, largest) : differenceScale(top);
    const paint = { ...scale, base: palette.ceramic, pixelRatio: columns / width };
    const pixels = planPixels({ model, result, caseName }, other ?? null, quantity, window, size, paint);
    return pictureUrl(pixels, size.columns, size.rows);
  }, [model, result, caseName, other, top, quantity, largest, window, width, pixelRatio, palette]);
  const otherPath = useMemo(() => {
    if (other === undefined || sameOutlines(other.model, model)) return null;
    const parts = headParts(other.model, other.result.sites, CHORD);
    return ringPath([...parts.body, ...parts.frame]);
  }, [other, model]);
  const box = { x: window.left, y: -window.top, width: window.width, height: window.height };
  return (
    <svg
      className={styles.map}
      width={width}
      viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
      role="img"
      aria-label={label}
      data-scheme={paper ? 'light' : scheme}
    >
      <clipPath id={clip}>
        <path d={bodyPath} clipRule="evenodd" />
      </clipPath>
      <path d={framePath} fill={palette.steel} fillRule="evenodd" />
      <image href={picture} {...box} preserveAspectRatio="none" clipPath={`url(#${clip})`} />
      <g fill="none" stroke={palette.line} className={styles.hair}>
        {partPaths.map((path) => (
          <path key={path} d={path} opacity={0.32} />
        ))}
        <path d={framePath} opacity={0.5} />
        <path d={bodyPath} opacity={0.9} />
        {otherPath && <path d={otherPath} strokeDasharray="5 3" opacity={0.8} />}
      </g>
      <PlanMarks
        head={head}
        palette={palette}
        unit={((enlarged ? ENLARGED : 1) * window.width) / width}
        foot={box.y + box.height}
        named={detail === 'names'}
        values={less === undefined && quantity === 'deviation'}
      />
    </svg>
  );
});
