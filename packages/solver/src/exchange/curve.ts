/** Where a curve passes, and how it goes on from there: `bulge = tan(angle / 4)` of the arc to the next, 0 straight. */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  /** Positive counter-clockwise; above 1 for more than half a circle. */
  readonly bulge: number;
}

/** Straight pieces and circular arcs, end to end, mm. */
export interface Curve {
  readonly vertices: readonly Vertex[];
  /** Whether the last goes on to the first. */
  readonly closed: boolean;
  readonly layer: string;
  /** Line of the file where it begins. */
  readonly line: number;
}

/** `x' = a x + c y + e`, `y' = b x + d y + f`. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Affine = [1, 0, 0, 1, 0, 0];

/** The map that applies `inner` first. */
export function after(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

export function mapped([a, b, c, d, e, f]: Affine, x: number, y: number): [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** Largest stretch of a map. */
export function stretch([a, b, c, d]: Affine): number {
  const [p, q, r] = [a * a + b * b, a * c + b * d, c * c + d * d];
  return Math.sqrt((p + r) / 2 + Math.hypot((p - r) / 2, q));
}

/** Vertices mapped: arcs stay arcs where the map keeps circles round, and become chords within the tolerance elsewhere. */
export function mapVertices(vertices: readonly Vertex[], closed: boolean, map: Affine, tolerance: number): Vertex[] {
  const [a, b, c, d] = map;
  const size = Math.hypot(a, b);
  const round = Math.abs(a * c + b * d) <= 1e-9 * size * size && Math.abs(Math.hypot(c, d) - size) <= 1e-9 * size;
  const turned = a * d - b * c < 0 ? -1 : 1;
  const source = round ? vertices : straightened(vertices, closed, tolerance / stretch(map));
  return source.map(({ x, y, bulge }) => {
    const [px, py] = mapped(map, x, y);
    return { x: px, y: py, bulge: bulge * turned };
  });
}

export interface Arc {
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  readonly from: number;
  /** Signed angle, counter-clockwise positive, radians. */
  readonly sweep: number;
}

/** The arc from a vertex to the next: `r = chord (1 + b^2) / (4 |b|)`, centre `(1 - b^2) / (4 b)` chords to the left. */
export function arcOf(p: Vertex, q: Vertex): Arc {
  const [dx, dy, b] = [q.x - p.x, q.y - p.y, p.bulge];
  const offset = (1 - b * b) / (4 * b);
  const [cx, cy] = [(p.x + q.x) / 2 - offset * dy, (p.y + q.y) / 2 + offset * dx];
  return {
    ...{ cx, cy },
    radius: (Math.hypot(dx, dy) * (1 + b * b)) / (4 * Math.abs(b)),
    from: Math.atan2(p.y - cy, p.x - cx),
    sweep: 4 * Math.atan(b),
  };
}

/** Pieces of an arc whose rise above their chords is within the tolerance. */
function piecesOf(radius: number, sweep: number, tolerance: number): number {
  const most = 2 * Math.acos(Math.max(0, 1 - Math.min(tolerance, radius) / radius));
  return Math.min(2000, Math.max(2, Math.ceil(Math.abs(sweep) / most)));
}

/** How many corners {@link straightened} would give. */
export function straightenedCount(vertices: readonly Vertex[], tolerance: number): number {
  return vertices.reduce((sum, vertex, i) => {
    if (vertex.bulge === 0) return sum + 1;
    const { radius, sweep } = arcOf(vertex, vertices[(i + 1) % vertices.length]);
    return sum + piecesOf(radius, sweep, tolerance);
  }, 0);
}

/** Curve without arcs: corners on them within the tolerance. */
export function straightened(vertices: readonly Vertex[], closed: boolean, tolerance: number): Vertex[] {
  return vertices.flatMap((vertex, i): Vertex[] => {
    const next = vertices[i + 1] ?? (closed ? vertices[0] : null);
    const corner = { x: vertex.x, y: vertex.y, bulge: 0 };
    if (vertex.bulge === 0 || next === null) return [corner];
    const { cx, cy, radius, from, sweep } = arcOf(vertex, next);
    const n = piecesOf(radius, sweep, tolerance);
    const inner = Array.from({ length: n - 1 }, (_, k) => {
      const angle = from + (sweep * (k + 1)) / n;
      return { x: cx + radius * Math.cos(angle), y: cy + radius * Math.sin(angle), bulge: 0 };
    });
    return [corner, ...inner];
  });
}

/** Area that a closed curve goes round counter-clockwise, mm2: its polygon and `r^2 (angle - sin angle) / 2` of each arc. */
export function enclosed(vertices: readonly Vertex[]): number {
  let twice = 0;
  vertices.forEach((p, i) => {
    const q = vertices[(i + 1) % vertices.length];
    twice += p.x * q.y - q.x * p.y;
    if (p.bulge === 0) return;
    const { radius, sweep } = arcOf(p, q);
    twice += radius * radius * (sweep - Math.sin(sweep));
  });
  return twice / 2;
}

/** The same curve the other way. */
export function reversed(vertices: readonly Vertex[], closed: boolean): Vertex[] {
  const n = vertices.length;
  return vertices.map((_, i) => {
    const { x, y } = vertices[n - 1 - i];
    const before = n - 2 - i;
    const bulge = before >= 0 ? vertices[before].bulge : closed ? vertices[n - 1].bulge : 0;
    return { x, y, bulge: -bulge + 0 };
  });
}

/** A circle as two halves. */
export function circleVertices(x: number, y: number, radius: number): Vertex[] {
  return [
    { x: x + radius, y, bulge: 1 },
    { x: x - radius, y, bulge: 1 },
  ];
}

/** An arc in pieces of half a circle at most. */
export function arcVertices(x: number, y: number, radius: number, from: number, sweep: number): Vertex[] {
  const n = Math.abs(sweep) > Math.PI ? 2 : 1;
  return Array.from({ length: n + 1 }, (_, k) => {
    const angle = from + (sweep * k) / n;
    return {
      x: x + radius * Math.cos(angle),
      y: y + radius * Math.sin(angle),
      bulge: k < n ? Math.tan(sweep / n / 4) : 0,
    };
  });
}
