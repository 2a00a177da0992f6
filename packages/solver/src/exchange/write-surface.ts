import type { HeadModel } from '../model/head-model.ts';
import type { HeadResult } from '../results/head-result.ts';
import { type BentSurface, bentSurface, type SurfaceOptions } from './bent-surface.ts';
import { rampColour } from './ramp.ts';
import { stampLine, stampOf } from './stamp.ts';

/** Codes of the format. */
const [GLTF, VERSION, JSON_CHUNK, BIN_CHUNK] = [0x46546c67, 2, 0x4e4f534a, 0x004e4942];
const [FLOAT, UNSIGNED_INT, VERTICES, INDICES] = [5126, 5125, 34962, 34963];

/**
 * The bent middle plane as binary glTF 2.0: metres, y up (x of the head along x, y of the head along -z), coloured by
 * deviation over the limit, with the deviation itself in mm as the attribute `_DEVIATION`.
 */
export function headGlb(model: HeadModel, result: HeadResult, options: SurfaceOptions = {}): Uint8Array {
  const surface = bentSurface(model, result, options);
  const { position, triangles, deviation, limit } = surface;
  const n = deviation.length;
  const points = new Float32Array(3 * n);
  const colours = new Float32Array(3 * n);
  for (let i = 0; i < n; i++) {
    points.set([position[3 * i] / 1000, position[3 * i + 2] / 1000, -position[3 * i + 1] / 1000], 3 * i);
    colours.set(rampColour(Math.abs(deviation[i]) / limit).map(linear), 3 * i);
  }
  const parts = [points, normalsOf(points, triangles), colours, Float32Array.from(deviation), triangles];
  const [views, bytes] = packed(parts);
  const box = [0, 1, 2].map((axis) => extreme(points, axis));
  const vectors = { componentType: FLOAT, count: n, type: 'VEC3' };
  const document = {
    asset: { version: '2.0', generator: stampLine(model), extras: { ...stampOf(model), ...about(surface) } },
    scene: 0,
    scenes: [{ nodes: [0], name: model.name }],
    nodes: [{ mesh: 0, name: `middle plane, case ${surface.case}` }],
    meshes: [
      { primitives: [{ attributes: { POSITION: 0, NORMAL: 1, COLOR_0: 2, _DEVIATION: 3 }, indices: 4, material: 0 }] },
    ],
    materials: [{ doubleSided: true, pbrMetallicRoughness: { metallicFactor: 0, roughnessFactor: 0.8 } }],
    accessors: [
      { bufferView: 0, ...vectors, min: box.map(([low]) => low), max: box.map(([, high]) => high) },
      { bufferView: 1, ...vectors },
      { bufferView: 2, ...vectors },
      { bufferView: 3, componentType: FLOAT, count: n, type: 'SCALAR' },
      { bufferView: 4, componentType: UNSIGNED_INT, count: triangles.length, type: 'SCALAR' },
    ],
    bufferViews: views,
    buffers: [{ byteLength: bytes.length }],
  };
  return glb(JSON.stringify(document), bytes);
}

/** The bent middle plane as binary STL, mm, z up. */
export function headStl(model: HeadModel, result: HeadResult, options: SurfaceOptions = {}): Uint8Array {
  const surface = bentSurface(model, result, options);
  const { position, triangles } = surface;
  const facets = triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * facets);
  const view = new DataView(bytes.buffer);
  const header = `${stampLine(model)}, case ${surface.case}, z x${surface.exaggeration}`.replace(/[^\x20-\x7e]/g, '?');
  bytes.set(new TextEncoder().encode(header.slice(0, 80)));
  view.setUint32(80, facets, true);
  for (let t = 0; t < facets; t++) {
    const corners = [0, 1, 2].map((k) => position.subarray(3 * triangles[3 * t + k], 3 * triangles[3 * t + k] + 3));
    [normal(corners[0], corners[1], corners[2]), ...corners].forEach((vector, v) => {
      vector.forEach((value, k) => {
        view.setFloat32(84 + 50 * t + 12 * v + 4 * k, value, true);
      });
    });
  }
  return bytes;
}

function about({ case: name, exaggeration, limit }: BentSurface) {
  return { case: name, exaggeration, limit, units: 'metre; _DEVIATION and limit in mm' };
}

/** sRGB channel as linear light (IEC 61966-2-1), as vertex colours are. */
function linear(channel: number): number {
  const c = channel / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

type Vector = ArrayLike<number>;

function normal(a: Vector, b: Vector, c: Vector): number[] {
  const cross = crossOf(a, b, c);
  const length = Math.hypot(...cross) || 1;
  return cross.map((value) => value / length);
}

function crossOf(a: Vector, b: Vector, c: Vector): number[] {
  const [u, v] = [b, c].map((p) => [p[0] - a[0], p[1] - a[1], p[2] - a[2]]);
  return [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
}

/** Unit normals of nodes: the mean of their triangles by area. */
function normalsOf(points: Float32Array, triangles: Uint32Array): Float32Array {
  const sums = new Float64Array(points.length);
  const at = (node: number) => points.subarray(3 * node, 3 * node + 3);
  for (let t = 0; t < triangles.length; t += 3) {
    const cross = crossOf(at(triangles[t]), at(triangles[t + 1]), at(triangles[t + 2]));
    for (let k = 0; k < 3; k++) for (let c = 0; c < 3; c++) sums[3 * triangles[t + k] + c] += cross[c];
  }
  return Float32Array.from(sums, (value, i) => {
    const first = i - (i % 3);
    return value / (Math.hypot(sums[first], sums[first + 1], sums[first + 2]) || 1);
  });
}

function extreme(points: Float32Array, axis: number): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (let i = axis; i < points.length; i += 3) [low, high] = [Math.min(low, points[i]), Math.max(high, points[i])];
  return [low, high];
}

/** Arrays end to end, four bytes a value, and where each stands. */
function packed(parts: readonly (Float32Array | Uint32Array)[]) {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.byteLength, 0));
  const view = new DataView(bytes.buffer);
  let byteOffset = 0;
  const views = parts.map((part) => {
    const isIndex = part instanceof Uint32Array;
    part.forEach((value, i) => {
      if (isIndex) view.setUint32(byteOffset + 4 * i, value, true);
      else view.setFloat32(byteOffset + 4 * i, value, true);
    });
    const place = { buffer: 0, byteOffset, byteLength: part.byteLength, target: isIndex ? INDICES : VERTICES };
    byteOffset += part.byteLength;
    return place;
  });
  return [views, bytes] as const;
}

/** Header, JSON and bytes, each chunk to a multiple of four. */
function glb(json: string, binary: Uint8Array): Uint8Array {
  const text = new TextEncoder().encode(json);
  const padded = (text.length + 3) & ~3;
  const length = 12 + 8 + padded + 8 + binary.length;
  const bytes = new Uint8Array(length).fill(0x20);
  const view = new DataView(bytes.buffer);
  [GLTF, VERSION, length, padded, JSON_CHUNK].forEach((value, i) => {
    view.setUint32(4 * i, value, true);
  });
  bytes.set(text, 20);
  view.setUint32(20 + padded, binary.length, true);
  view.setUint32(24 + padded, BIN_CHUNK, true);
  bytes.set(binary, 28 + padded);
  return bytes;
}
