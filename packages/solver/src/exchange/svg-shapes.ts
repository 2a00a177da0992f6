import svgpath from 'svgpath';
import { circleVertices, type Vertex } from './curve.ts';
import { polyline } from './dxf-shapes.ts';
import { bezier, flattened, requireFewCorners } from './flatten.ts';
import { lengthOf, PER_UNIT } from './svg-length.ts';

interface Drawn {
  readonly vertices: readonly Vertex[];
  readonly closed: boolean;
}

type Attributes = Readonly<Record<string, string | undefined>>;
type XY = readonly [number, number];

/** What elements draw, by name, or the reason why nothing can be made of them; `tolerance` in their own units. */
export const ELEMENTS: Readonly<
  Record<string, (attributes: Attributes, tolerance: number) => readonly Drawn[] | string>
> = {
  path: ({ d = '' }, tolerance) => pathShapes(d, tolerance),
  rect: rectangleShape,
  circle: (attributes) => {
    const [cx, cy, r] = [number(attributes.cx, 0), number(attributes.cy, 0), number(attributes.r, 0)];
    return r > 0
      ? [{ vertices: circleVertices(cx, cy, r), closed: true }]
      : `has a radius of ${attributes.r?.slice(0, 24)}; remove it`;
  },
  ellipse: (attributes, tolerance) => {
    const [cx, cy, rx, ry] = ['cx', 'cy', 'rx', 'ry'].map((key) => number(attributes[key], 0));
    if (!(rx > 0 && ry > 0)) return 'has no size; remove it';
    return pathShapes(
      `M${cx - rx} ${cy}A${rx} ${ry} 0 0 0 ${cx + rx} ${cy}A${rx} ${ry} 0 0 0 ${cx - rx} ${cy}Z`,
      tolerance,
    );
  },
  line: ({ x1, y1, x2, y2 }, tolerance) =>
    pathShapes(`M${number(x1, 0)} ${number(y1, 0)}L${number(x2, 0)} ${number(y2, 0)}`, tolerance),
  polyline: ({ points = '' }, tolerance) => pathShapes(`M${points}`, tolerance),
  polygon: ({ points = '' }, tolerance) => pathShapes(`M${points}Z`, tolerance),
};

/** A length that is none, or one of what it is drawn in: the element that has it is left out. */
export class BadLength extends Error {}

/** In user units, which are CSS pixels before all transforms. @throws BadLength for others, such as per cent */
function number(text: string | undefined, otherwise: number): number {
  if (text === undefined || text.trim() === 'auto') return otherwise;
  const length = lengthOf(text);
  if (length !== null) return length.unit === '' ? length.value : (length.value * PER_UNIT[length.unit]) / PER_UNIT.px;
  throw new BadLength(`has the length "${text.slice(0, 24)}"; give it in units of the drawing`);
}

function rectangleShape(attributes: Attributes, tolerance: number): readonly Drawn[] | string {
  const [x, y, w, h] = ['x', 'y', 'width', 'height'].map((key) => number(attributes[key], 0));
  if (!(w > 0 && h > 0)) return 'has no size; remove it';
  const [givenX, givenY] = [number(attributes.rx, NaN), number(attributes.ry, NaN)];
  const rx = Math.min(w / 2, Number.isNaN(givenX) ? (Number.isNaN(givenY) ? 0 : givenY) : givenX);
  const ry = Math.min(h / 2, Number.isNaN(givenY) ? rx : givenY);
  if (rx === 0 || ry === 0) return pathShapes(`M${x} ${y}h${w}v${h}h${-w}Z`, tolerance);
  const corner = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx * rx} ${dy * ry}`;
  return pathShapes(
    `M${x + rx} ${y}h${w - 2 * rx}${corner(1, 1)}v${h - 2 * ry}${corner(-1, 1)}h${2 * rx - w}${corner(-1, -1)}v${2 * ry - h}${corner(1, -1)}Z`,
    tolerance,
  );
}

/** Subpaths of path data: circular arcs stay arcs, all other curves become chords within the tolerance. */
function pathShapes(data: string, tolerance: number): readonly Drawn[] | string {
  const path = svgpath(data);
  const flaw: unknown = Reflect.get(path, 'err');
  if (typeof flaw === 'string' && flaw !== '')
    return `has path data that break off (${flaw.replace(/^SvgPath: /, '')})`;
  const shapes: Drawn[] = [];
  let flawed: string | null = null;
  let vertices: { x: number; y: number; bulge: number }[] = [];
  const end = (closed: boolean): void => {
    if (vertices.length > 1) {
      const shape = polyline(vertices, closed);
      if (typeof shape === 'string') flawed ??= shape;
      else shapes.push(shape);
    }
    vertices = [];
  };
  let corners = 0;
  const to = (points: readonly XY[]): void => {
    corners += points.length;
    requireFewCorners(corners);
    for (const [x, y] of points.slice(1)) vertices.push({ x, y, bulge: 0 });
  };
  path
    .abs()
    .unshort()
    .iterate((segment, _, x, y) => {
      if (segment[0] !== 'M' && segment[0] !== 'Z' && vertices.length === 0) vertices.push({ x, y, bulge: 0 });
      switch (segment[0]) {
        case 'M':
          end(false);
          vertices.push({ x: segment[1], y: segment[2], bulge: 0 });
          break;
        case 'L':
          vertices.push({ x: segment[1], y: segment[2], bulge: 0 });
          break;
        case 'H':
          vertices.push({ x: segment[1], y, bulge: 0 });
          break;
        case 'V':
          vertices.push({ x, y: segment[1], bulge: 0 });
          break;
        case 'C': {
          const [, ax, ay, bx, by, ex, ey] = segment;
          to(flattened(bezier([x, y], [ax, ay], [bx, by], [ex, ey]), 0, 1, tolerance));
          break;
        }
        case 'Q': {
          const [, qx, qy, ex, ey] = segment;
          const third = (a: number, b: number) => a + (2 / 3) * (b - a);
          to(
            flattened(
              bezier([x, y], [third(x, qx), third(y, qy)], [third(ex, qx), third(ey, qy)], [ex, ey]),
              0,
              1,
              tolerance,
            ),
          );
          break;
        }
        case 'A':
          arc([x, y], segment);
          break;
        case 'Z':
          end(true);
          break;
      }
    });
  end(false);
  if (shapes.length > 0) return shapes;
  return flawed ?? 'draws nothing; remove it';

  /** Endpoint to centre form of an elliptical arc (SVG 1.1, F.6.5 and F.6.6). */
  function arc(
    [x, y]: XY,
    [, rx, ry, turn, large, sweep, ex, ey]: readonly ['A', number, number, number, number, number, number, number],
  ): void {
    const last = vertices[vertices.length - 1];
    if (rx === 0 || ry === 0 || (x === ex && y === ey)) {
      vertices.push({ x: ex, y: ey, bulge: 0 });
      return;
    }
    const phi = (turn * Math.PI) / 180;
    const [c, s] = [Math.cos(phi), Math.sin(phi)];
    const [hx, hy] = [(x - ex) / 2, (y - ey) / 2];
    const [px, py] = [c * hx + s * hy, -s * hx + c * hy];
    const grow = Math.max(1, Math.hypot(px / rx, py / ry));
    const [a, b] = [Math.abs(rx) * grow, Math.abs(ry) * grow];
    const under = (a * b) ** 2 / ((a * py) ** 2 + (b * px) ** 2) - 1;
    const root = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, under));
    const [qx, qy] = [(root * a * py) / b, (-root * b * px) / a];
    const from = Math.atan2((py - qy) / b, (px - qx) / a);
    let angle = Math.atan2((-py - qy) / b, (-px - qx) / a) - from;
    if (sweep === 1 && angle < 0) angle += 2 * Math.PI;
    if (sweep === 0 && angle > 0) angle -= 2 * Math.PI;
    const [cx, cy] = [c * qx - s * qy + (x + ex) / 2, s * qx + c * qy + (y + ey) / 2];
    if (Math.abs(a - b) <= 1e-9 * a) {
      last.bulge = Math.tan(angle / 4);
      vertices.push({ x: ex, y: ey, bulge: 0 });
      return;
    }
    const at = (t: number): XY => {
      const [u, v] = [a * Math.cos(from + t * angle), b * Math.sin(from + t * angle)];
      return [cx + c * u - s * v, cy + s * u + c * v];
    };
    to(flattened(at, 0, 1, tolerance));
  }
}
