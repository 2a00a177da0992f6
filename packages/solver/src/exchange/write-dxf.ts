import type { Shape } from '../geometry/shape.ts';
import { siteLayout } from '../layout/sites.ts';
import type { HeadModel } from '../model/head-model.ts';
import { screws } from '../model/screws.ts';
import { numberText } from './csv-text.ts';
import { circleVertices, type Vertex } from './curve.ts';
import { stampLine } from './stamp.ts';

/** Layers with their colour numbers. */
const LAYERS: Readonly<Record<string, number>> = {
  ...{ OUTLINE: 7, OPENINGS: 8, FRAME: 5, WINDOW: 5, SITES: 3, FASTENERS: 1, HOLES: 1, 'KEEP-OUTS': 6 },
};
/** Height of names, mm. */
const TEXT = 1;

type Groups = (string | number)[];

/**
 * Plan of a head for the board as ASCII DXF (release 12: polylines with bulges, circles, text), mm, each kind on a layer
 * of its own: outline, openings, frame and window, sites, fasteners with heads and holes, keep-outs.
 */
export function headDxf(model: HeadModel): string {
  const { body, frame, fasteners, keepOuts = [], sites } = model;
  const entities: Groups = [
    ...shapeGroups('OUTLINE', body.outline),
    ...(body.openings ?? []).flatMap((shape) => shapeGroups('OPENINGS', shape)),
    ...(frame === undefined ? [] : [...shapeGroups('FRAME', frame.outer), ...shapeGroups('WINDOW', frame.window)]),
    ...siteLayout(sites).flatMap(({ name, centre: [x, y], field: [width, height] }) => [
      ...shapeGroups('SITES', { rectangle: [width, height], centre: [x, y] }),
      ...textGroups('SITES', name, [x, y]),
    ]),
    ...fasteners.flatMap(({ name, at, screw, bearing }) => {
      const size = screw !== undefined && Object.hasOwn(screws, screw) ? screws[screw] : null;
      const head = Math.max(size?.head ?? 0, bearing ?? 0) || TEXT;
      return [
        ...shapeGroups('FASTENERS', { circle: head, centre: at }),
        ...textGroups('FASTENERS', name, at),
        ...(size === null ? [] : shapeGroups('HOLES', { circle: size.hole, centre: at })),
      ];
    }),
    ...keepOuts.flatMap(({ name, shape }) => [
      ...shapeGroups('KEEP-OUTS', shape),
      ...textGroups('KEEP-OUTS', name, placeIn(shape)),
    ]),
  ];
  const groups: Groups = [
    ...[999, stampLine(model), 0, 'SECTION', 2, 'HEADER', 9, '$ACADVER', 1, 'AC1009'],
    ...[9, '$INSUNITS', 70, 4, 9, '$MEASUREMENT', 70, 1, 0, 'ENDSEC'],
    ...[0, 'SECTION', 2, 'TABLES', 0, 'TABLE', 2, 'LAYER', 70, Object.keys(LAYERS).length],
    ...Object.entries(LAYERS).flatMap(([name, colour]) => [0, 'LAYER', 2, name, 70, 0, 62, colour, 6, 'CONTINUOUS']),
    ...[0, 'ENDTAB', 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES'],
    ...entities,
    ...[0, 'ENDSEC', 0, 'EOF'],
  ];
  const lines: string[] = [];
  for (const group of groups) lines.push(typeof group === 'number' ? numberText(group) : group);
  return `${lines.join('\r\n')}\r\n`;
}

function shapeGroups(layer: string, shape: Shape): Groups {
  if ('circle' in shape) {
    const [x, y] = shape.centre ?? [0, 0];
    return [0, 'CIRCLE', 8, layer, 10, x, 20, y, 30, 0, 40, shape.circle / 2];
  }
  const vertices = 'polygon' in shape ? shape.polygon.map(([x, y]) => ({ x, y, bulge: 0 })) : roundedRectangle(shape);
  return [
    ...[0, 'POLYLINE', 8, layer, 66, 1, 10, 0, 20, 0, 30, 0, 70, 1],
    ...vertices.flatMap(({ x, y, bulge }) => [0, 'VERTEX', 8, layer, 10, x, 20, y, 30, 0, 42, String(bulge)]),
    ...[0, 'SEQEND', 8, layer],
  ];
}

/** A quarter turn bulges by tan(90 deg / 4). */
function roundedRectangle({
  rectangle: [w, h],
  centre: [cx, cy] = [0, 0],
  corner = 0,
}: Extract<Shape, { rectangle: unknown }>): Vertex[] {
  const [dx, dy] = [w / 2, h / 2];
  const turns = [
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ] as const;
  if (corner === 0) return turns.map(([sx, sy]) => ({ x: cx + sx * dx, y: cy + sy * dy, bulge: 0 }));
  if (corner === dx && corner === dy) return circleVertices(cx, cy, corner);
  const bulge = Math.tan(Math.PI / 8);
  const corners = turns.flatMap(([sx, sy]): Vertex[] => {
    const side: Vertex = { x: cx + sx * dx, y: cy + sy * (dy - corner), bulge: 0 };
    const end: Vertex = { x: cx + sx * (dx - corner), y: cy + sy * dy, bulge: 0 };
    const [from, to] = sx * sy > 0 ? [side, end] : [end, side];
    return [{ ...from, bulge }, to];
  });
  return corners;
}

function textGroups(layer: string, text: string, [x, y]: readonly [number, number]): Groups {
  return [0, 'TEXT', 8, layer, 10, x, 20, y, 30, 0, 40, TEXT, 1, plainText(text)];
}

/** One line of ASCII; other letters by their code. */
function plainText(text: string): string {
  return text
    .replace(/[\r\n\t]+/g, ' ')
    .replace(/[^\x20-\x7e]/g, (letter) => `\\U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`);
}

/** A point inside, for its name: the centre, or the middle of a thin ear of a polygon. */
function placeIn(shape: Shape): [number, number] {
  if (!('polygon' in shape)) return shape.centre ?? [0, 0];
  return interior(shape.polygon);
}

/** Inside the leftmost corner of a polygon: the middle between it and the nearest corner in its triangle, or its far side. */
function interior(corners: readonly (readonly [number, number])[]): [number, number] {
  const n = corners.length;
  const i = corners.reduce((best, [x], k) => (x < corners[best][0] ? k : best), 0);
  const [a, b, c] = [corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n]];
  const cross = (p: readonly number[], q: readonly number[], r: readonly number[]) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
  const turn = Math.sign(cross(a, b, c)) || 1;
  const inner = corners.filter(
    (p) =>
      p !== a && p !== b && p !== c && [cross(a, b, p), cross(b, c, p), cross(c, a, p)].every((s) => s * turn >= 0),
  );
  const far = ([x, y]: readonly [number, number]) => Math.abs((c[0] - a[0]) * (a[1] - y) - (a[0] - x) * (c[1] - a[1]));
  const q = inner.reduce<readonly [number, number] | null>(
    (best, p) => (best === null || far(p) > far(best) ? p : best),
    null,
  );
  const other = q ?? [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];
  return [(b[0] + other[0]) / 2, (b[1] + other[1]) / 2];
}
