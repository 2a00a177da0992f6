/**
 * Region of every triangle: -1 off the plate, 0 the base, r + 1 the last region r that holds it.
 *
 * Winding numbers are carried from triangle to triangle, starting with none outside the hull and changing only where
 * a piece of a segment is crossed; no coordinates are looked at, so the answer is consistent whatever the rounding.
 *
 * @param triangles `[3 * nTriangles]` nodes, counter-clockwise
 * @param halfedges `[3 * nTriangles]` opposite half-edge, -1 on the hull
 * @param piece `[3 * nTriangles]` piece of a segment on the half-edge, -1 for none
 * @param pieces `[2 * nPieces]` node pairs in the sense of their segment
 * @param bounds alternating ring and turn of each segment, as in `Arrangement`
 */
export function classify(
  triangles: Uint32Array,
  halfedges: Int32Array,
  piece: Int32Array,
  pieces: Uint32Array,
  pieceSegment: Int32Array,
  bounds: readonly (readonly number[])[],
): Int32Array {
  const region = new Int32Array(triangles.length / 3);
  const patch = new Int32Array(region.length).fill(-1);
  /** Winding of the rings around each patch, as alternating ring and winding; absent rings wind zero times. */
  const windings: (readonly number[])[] = [];
  const stack: number[] = [];

  const crossed = (winding: readonly number[], e: number): readonly number[] => {
    const p = piece[e];
    if (p < 0) return winding;
    // The half-edge has its triangle on its left: entering it, one comes from the right.
    const sense = pieces[2 * p] === triangles[e] ? 1 : -1;
    return added(winding, bounds[pieceSegment[p]], sense);
  };
  const flood = (t: number, winding: readonly number[]) => {
    const own = windings.push(winding) - 1;
    const value = regionOf(winding);
    const inPatch = [t];
    patch[t] = own;
    while (inPatch.length > 0) {
      const u = inPatch.pop()!;
      region[u] = value;
      for (let e = 3 * u; e < 3 * u + 3; e++) {
        const across = halfedges[e];
        if (across < 0) continue;
        const v = Math.floor(across / 3);
        if (patch[v] >= 0) continue;
        if (piece[e] >= 0) stack.push(across);
        else {
          patch[v] = own;
          inPatch.push(v);
        }
      }
    }
  };

  const hull = halfedges.indexOf(-1);
  flood(Math.floor(hull / 3), crossed([], hull));
  while (stack.length > 0) {
    const e = stack.pop()!;
    const t = Math.floor(e / 3);
    if (patch[t] >= 0) continue;
    flood(t, crossed(windings[patch[Math.floor(halfedges[e] / 3)]], e));
  }
  return region;
}

function added(winding: readonly number[], turns: readonly number[], sense: number): readonly number[] {
  const sum = [...winding];
  for (let i = 0; i < turns.length; i += 2) {
    let at = 0;
    while (at < sum.length && sum[at] !== turns[i]) at += 2;
    if (at === sum.length) sum.push(turns[i], sense * turns[i + 1]);
    else {
      sum[at + 1] += sense * turns[i + 1];
      if (sum[at + 1] === 0) sum.splice(at, 2);
    }
  }
  return sum;
}

function regionOf(winding: readonly number[]): number {
  let last = 0;
  let onPlate = false;
  for (let i = 0; i < winding.length; i += 2) {
    if (winding[i] === 0) onPlate = true;
    last = Math.max(last, winding[i]);
  }
  return onPlate ? last : -1;
}
