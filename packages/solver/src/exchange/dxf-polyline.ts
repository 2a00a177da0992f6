import type { Vertex } from './curve.ts';
import { type DxfRecord, numberIn } from './dxf-records.ts';
import { polyline, type Shaped } from './dxf-shapes.ts';

export interface DxfEntity {
  readonly record: DxfRecord;
  /** Of a polyline in the older form, which come after it. */
  readonly vertices: readonly DxfRecord[];
}

/** Entities, each with the vertices that follow it. */
export function withVertices(entities: readonly DxfRecord[]): DxfEntity[] {
  const whole: { record: DxfRecord; vertices: DxfRecord[] }[] = [];
  let open: DxfRecord[] | null = null;
  for (const record of entities) {
    if (record.type === 'SEQEND') open = null;
    else if (record.type === 'VERTEX' && open !== null) open.push(record);
    else {
      const vertices: DxfRecord[] = [];
      whole.push({ record, vertices });
      open = record.type === 'POLYLINE' || record.type === 'INSERT' ? vertices : null;
    }
  }
  return whole;
}

/** A polyline in the older form; a text says why it is no outline. */
export function heavyPolyline(record: DxfRecord, vertices: readonly DxfRecord[]): Shaped {
  const flags = numberIn(record, 70, 0);
  if ((flags & (8 | 16 | 64)) !== 0) return 'is a polyline in space or a mesh; flatten the drawing';
  const flat = vertices
    .filter((vertex) => (numberIn(vertex, 70, 0) & 16) === 0)
    .map(
      (vertex): Vertex => ({
        x: numberIn(vertex, 10, 0),
        y: numberIn(vertex, 20, 0),
        bulge: numberIn(vertex, 42, 0),
      }),
    );
  return polyline(flat, (flags & 1) === 1);
}

/** Constant width of a light polyline, or that of its ends for any polyline. */
export function isWide({ type, groups }: DxfRecord): boolean {
  const codes = type === 'LWPOLYLINE' ? [40, 41, 43] : type === 'POLYLINE' ? [40, 41] : [];
  return groups.some(({ code, value }) => codes.includes(code) && Number(value) > 0);
}
