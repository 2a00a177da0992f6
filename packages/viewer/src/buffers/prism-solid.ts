/** A small part standing on z = 0: `[3 * nVertices]` positions and normals, triangle indices. */
export interface PrismSolid {
  readonly position: Float32Array;
  readonly normal: Float32Array;
  readonly index: Uint16Array;
}

/** Upright prism over a regular polygon, closed at the top; round enough with 32 sides, a socket with six. */
export function prismSolid(radius: number, height: number, sides: number, bottom = 0): PrismSolid {
  const position = new Float32Array(3 * (4 * sides + sides));
  const normal = new Float32Array(position.length);
  const index: number[] = [];
  const corner = (i: number): readonly [number, number] => {
    const angle = (2 * Math.PI * i) / sides;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  };
  for (let i = 0; i < sides; i++) {
    const middle = (2 * Math.PI * (i + 0.5)) / sides;
    const [a, b] = [corner(i), corner(i + 1)];
    const first = 4 * i;
    [
      [...a, bottom],
      [...b, bottom],
      [...b, bottom + height],
      [...a, bottom + height],
    ].forEach((at, k) => {
      position.set(at, 3 * (first + k));
      normal.set([Math.cos(middle), Math.sin(middle), 0], 3 * (first + k));
    });
    index.push(first, first + 1, first + 2, first, first + 2, first + 3);
    const lid = 4 * sides + i;
    position.set([...a, bottom + height], 3 * lid);
    normal.set([0, 0, 1], 3 * lid);
    if (i >= 2) index.push(4 * sides, lid - 1, lid);
  }
  return { position, normal, index: Uint16Array.from(index) };
}
