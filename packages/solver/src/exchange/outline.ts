import { Fault } from '../fault/fault.ts';
import type { Shape } from '../geometry/shape.ts';
import { enclosed } from './curve.ts';
import type { Label } from './drawing.ts';
import { wantedLayers } from './drawing-layers.ts';
import { centred, withinReach } from './drawing-place.ts';
import { dxfStrokes } from './dxf-drawing.ts';
import { type FileContent, fileText } from './file-text.ts';
import { closeLoops } from './loops.ts';
import { type Dropped, extentsOf, type Reading } from './reading.ts';
import { soundShape } from './sound-shape.ts';
import { svgStrokes } from './svg-drawing.ts';

/** A closed shape of a drawing. */
export interface DrawnShape {
  readonly shape: Shape;
  readonly layer: string;
  readonly line: number;
  /** mm2 */
  readonly area: number;
}

/** Closed shapes of a drawing, the largest first, and its words. */
export interface Drawing {
  readonly shapes: readonly DrawnShape[];
  readonly labels: readonly Label[];
}

export interface DrawingOptions {
  /** Unit of lengths, such as `mil`; that of the file if left out. */
  readonly units?: string | undefined;
  /** Layers to read, all if left out. */
  readonly layers?: readonly string[] | undefined;
  /** Largest gap between ends that is closed, mm; 0.01 if left out. */
  readonly gap?: number | undefined;
  /** Of chords on curves that are no arcs, and on arcs of polygons, mm; 0.002 if left out. */
  readonly tolerance?: number | undefined;
  /** Where the middle of what is read goes to, mm; it stays where it is if left out. */
  readonly centre?: readonly [number, number] | undefined;
}

/**
 * Closed shapes of a DXF or SVG drawing.
 *
 * @throws Fault UNREADABLE when there is nothing to take, USAGE for an unknown unit or layer, TOO_LARGE
 */
export function readDrawing(content: FileContent, options: DrawingOptions = {}): Reading<Drawing> {
  const { units, gap = 0.01, tolerance = 0.002 } = options;
  if (!(gap >= 0 && gap <= 10 && tolerance >= 1e-6 && tolerance <= 1))
    throw new Fault('USAGE', 'Gaps may be 0 to 10 mm, the tolerance 0.000001 to 1 mm.');
  const { text, guesses: letters } = fileText(content, 'drawing');
  const isSvg = /^\s*</.test(text);
  const strokes = isSvg ? svgStrokes(text, units, tolerance) : dxfStrokes(text, units, tolerance);
  const names = strokes.layers.map(({ name }) => name);
  const shown = names.filter((name) => !strokes.hidden.has(name));
  const wanted = wantedLayers(options.layers, names, shown);
  const [curves, labels] = centred(
    strokes.curves.filter(({ layer }) => wanted.has(layer)),
    strokes.labels.filter(({ layer }) => wanted.has(layer)),
    options.centre,
  );
  const dropped: Dropped[] = [...strokes.dropped];
  for (const name of names)
    if (strokes.hidden.has(name) && !wanted.has(name))
      dropped.push({ line: 0, reason: `layer "${name}" is off or frozen; name it among the layers to read it` });
  const guesses: string[] = [...letters, ...strokes.guesses];
  const near = curves.filter((curve) => withinReach(curve, dropped));
  const shapes: DrawnShape[] = [];
  for (const name of wanted) {
    const closed = closeLoops(
      near.filter(({ layer }) => layer === name),
      gap,
    );
    guesses.push(...closed.guesses);
    dropped.push(...closed.dropped);
    for (const { vertices, line, layer } of closed.loops) {
      const made = soundShape(vertices, tolerance);
      if (typeof made === 'string') dropped.push({ line, reason: `the shape on layer "${layer}" ${made}` });
      else shapes.push({ shape: made, layer, line, area: Math.abs(enclosed(vertices)) });
    }
  }
  if (shapes.length === 0)
    throw new Fault(
      'UNREADABLE',
      `The drawing holds no closed shape${dropped.length === 0 ? '' : `: line ${dropped[0].line}, ${dropped[0].reason}`}. Draw closed outlines, choose other layers, or allow larger gaps.`,
      '',
      { line: dropped[0]?.line ?? 1, layers: names, dropped: dropped.slice(0, 50) },
    );
  return {
    read: { shapes: shapes.sort((a, b) => b.area - a.area), labels },
    preview: {
      counts: { ...counted(shapes), labels: labels.length, dropped: dropped.length },
      extents: extentsOf(shapes.flatMap(({ shape }) => cornersOf(shape))),
      layers: strokes.layers,
      units: strokes.units,
      guesses,
      dropped: dropped.sort((a, b) => a.line - b.line),
    },
  };
}

/** Points that its box is that of. */
function cornersOf(shape: Shape): [number, number][] {
  if ('polygon' in shape) return shape.polygon;
  const [cx, cy] = shape.centre ?? [0, 0];
  const [w, h] = 'circle' in shape ? [shape.circle, shape.circle] : shape.rectangle;
  return [
    [cx - w / 2, cy - h / 2],
    [cx + w / 2, cy + h / 2],
  ];
}

function counted(shapes: readonly DrawnShape[]): Record<string, number> {
  const kinds = { rectangles: 0, circles: 0, polygons: 0 };
  for (const { shape } of shapes)
    kinds['polygon' in shape ? 'polygons' : 'circle' in shape ? 'circles' : 'rectangles']++;
  return kinds;
}
