/** Four points and the share of each: `sum c_i z_i` is the same for every plane added to z, and is at most the zone. */
export interface ZoneCut {
  readonly points: readonly number[];
  /** Sums of c, c x and c y are zero, that of |c| is two. */
  readonly share: readonly number[];
  /** `sum c_i z_i`, mm. */
  readonly height: number;
}

/** Exchanges after which the cut stands as it is; a handful settles it. */
const ROUNDS = 60;

/**
 * A lower bound of the minimum zone that is linear in z: the dual of the least slab, measured along z.
 *
 * Points held in a slab of height W differ from a plane by at most W/2, so `|sum c_i z_i| <= W` whatever the plane.
 * Of four points the shares are the areas of the triangles of the other three with alternate signs. The point that the
 * slab of the four misses by most enters for one of them, such that the height grows most (exchange algorithm for the
 * best uniform approximation, Stiefel 1959; from memory), until nothing is missed: then the cut is the zone itself, but for
 * the cosine of its tilt.
 *
 * @param points `[3 * n]` x, y, z, mm
 * @returns `null` when no four points span an area and a height
 */
export function zoneCut(points: Float64Array): ZoneCut | null {
  const n = points.length / 3;
  const first = firstCut(points, n);
  if (first === null) return null;
  let cut: ZoneCut = first;
  for (let round = 0; round < ROUNDS; round++) {
    const plane = midPlane(points, cut);
    if (plane === null) return cut;
    let [entering, most] = [-1, (Math.abs(cut.height) / 2) * (1 + 1e-9)];
    for (let i = 0; i < n; i++) {
      const miss = Math.abs(points[3 * i + 2] - plane(points[3 * i], points[3 * i + 1]));
      if (miss > most) [entering, most] = [i, miss];
    }
    if (entering < 0) return cut;
    let better: ZoneCut = cut;
    for (let leaving = 0; leaving < 4; leaving++) {
      const trial = cutOf(points, cut.points.with(leaving, entering));
      if (trial !== null && Math.abs(trial.height) > Math.abs(better.height) * (1 + 1e-12)) better = trial;
    }
    if (better === cut) return cut;
    cut = better;
  }
  return cut;
}

/** The best of some fours among points far out and those highest and lowest. */
function firstCut(points: Float64Array, n: number): ZoneCut | null {
  const extremes = new Set<number>();
  for (const [a, b, c] of [
    [1, 1, 0],
    [1, -1, 0],
    [0, 0, 1],
  ])
    for (const sign of [1, -1]) {
      let [index, most] = [0, -Infinity];
      for (let i = 0; i < n; i++) {
        const along = sign * (a * points[3 * i] + b * points[3 * i + 1] + c * points[3 * i + 2]);
        if (along > most) [index, most] = [i, along];
      }
      extremes.add(index);
    }
  const list = [...extremes];
  let best: ZoneCut | null = null;
  for (let i = 0; i < list.length; i++)
    for (let j = i + 1; j < list.length; j++)
      for (let k = j + 1; k < list.length; k++)
        for (let l = k + 1; l < list.length; l++) {
          const cut = cutOf(points, [list[i], list[j], list[k], list[l]]);
          if (cut !== null && (best === null || Math.abs(cut.height) > Math.abs(best.height))) best = cut;
        }
  return best;
}

function cutOf(points: Float64Array, four: readonly number[]): ZoneCut | null {
  const area = (a: number, b: number, c: number): number => {
    const [x, y] = [points[3 * a], points[3 * a + 1]];
    return (points[3 * b] - x) * (points[3 * c + 1] - y) - (points[3 * c] - x) * (points[3 * b + 1] - y);
  };
  const [p, q, s, t] = four;
  const share = [area(q, s, t), -area(p, s, t), area(p, q, t), -area(p, q, s)];
  const total = share.reduce((sum, c) => sum + Math.abs(c), 0);
  if (!(total > 0)) return null;
  const scaled = share.map((c) => (2 * c) / total);
  return { points: four, share: scaled, height: scaled.reduce((sum, c, k) => sum + c * points[3 * four[k] + 2], 0) };
}

/** The plane from which the four points differ by half the height, in the senses of their shares. */
function midPlane(points: Float64Array, { points: four, share, height }: ZoneCut) {
  const thin = share.reduce((least, c, k) => (Math.abs(c) < Math.abs(share[least]) ? k : least), 0);
  // The largest triangle leaves out the point of the largest share.
  const out = share.reduce((most, c, k) => (Math.abs(c) > Math.abs(share[most]) ? k : most), 0);
  if (Math.abs(share[thin]) < 1e-9) return null;
  const [a, b, c] = four.flatMap((point, k) =>
    k === out
      ? []
      : [
          {
            x: points[3 * point],
            y: points[3 * point + 1],
            z: points[3 * point + 2] - (Math.sign(share[k]) * height) / 2,
          },
        ],
  );
  const det = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
  const bx = ((b.z - a.z) * (c.y - a.y) - (c.z - a.z) * (b.y - a.y)) / det;
  const by = ((b.x - a.x) * (c.z - a.z) - (c.x - a.x) * (b.z - a.z)) / det;
  return (x: number, y: number): number => a.z + bx * (x - a.x) + by * (y - a.y);
}
