type Groups = readonly (string | number)[];

/** An ASCII DXF of the groups of its entities, made by hand. */
export function dxf(entities: Groups, { units, blocks = [] }: { units?: number; blocks?: Groups } = {}): string {
  const header = units === undefined ? [] : [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, units, 0, 'ENDSEC'];
  const held = blocks.length === 0 ? [] : [0, 'SECTION', 2, 'BLOCKS', ...blocks, 0, 'ENDSEC'];
  return [...header, ...held, 0, 'SECTION', 2, 'ENTITIES', ...entities, 0, 'ENDSEC', 0, 'EOF'].join('\n');
}

export const line = (x0: number, y0: number, x1: number, y1: number, layer = 'L'): Groups => [
  ...[0, 'LINE', 8, layer, 10, x0, 20, y0, 11, x1, 21, y1],
];

export const arc = (x: number, y: number, r: number, from: number, to: number, layer = 'L'): Groups => [
  ...[0, 'ARC', 8, layer, 10, x, 20, y, 40, r, 50, from, 51, to],
];

export const circle = (x: number, y: number, r: number, layer = 'L'): Groups => [
  ...[0, 'CIRCLE', 8, layer, 10, x, 20, y, 40, r],
];

/** x, y and bulge of each vertex. */
export const light = (
  vertices: readonly (readonly [number, number, number?])[],
  closed = true,
  layer = 'L',
): Groups => [
  ...[0, 'LWPOLYLINE', 8, layer, 90, vertices.length, 70, closed ? 1 : 0],
  ...vertices.flatMap(([x, y, bulge = 0]) => [10, x, 20, y, 42, bulge]),
];

/** The sides of a box one by one. */
export const box = (x0: number, y0: number, x1: number, y1: number, layer = 'L'): Groups => [
  ...line(x0, y0, x1, y0, layer),
  ...line(x1, y0, x1, y1, layer),
  ...line(x1, y1, x0, y1, layer),
  ...line(x0, y1, x0, y0, layer),
];
