import type { AreaMass } from '../../assembly/area-mass.ts';
import type { Reactor } from './reactions.ts';
import type { Stand } from './stand.ts';

/** Root mean square of the deflection over an area, about its mean, for placements on one stand. */
export interface RmsForm {
  rms(reactor: Reactor, index: number): number;
}

/**
 * The deflection is a sum of known fields with the forces as shares, so its mean square is a quadratic form in them:
 * `int (w - mean)^2 = q^T (U^T M U - m m^T / A) q`, with U the fields of unit forces, of the free rigid motions and of the
 * loads, and m their integrals. A placement costs the square of its supports, however fine the mesh.
 *
 * @param mass over the area, on nodes in the order of the mesh
 */
export function rmsForm(mass: AreaMass): (stand: Stand) => RmsForm {
  // `M u` of fields seen before: a search that moves one support of many meets most of them again.
  const known = new WeakMap<Float64Array, Float64Array>();
  const times = (field: Float64Array): Float64Array => {
    const product = known.get(field) ?? mass.times(field);
    known.set(field, product);
    return product;
  };
  return (stand) => formOn(stand, mass, times);
}

function formOn({ ground, columns }: Stand, mass: AreaMass, times: (field: Float64Array) => Float64Array): RmsForm {
  const fields = [...columns.map(({ at }) => at), ...ground.motions, ...ground.cases.map(({ at }) => at)];
  const r = ground.motions.length;
  const n = fields.length;
  const mean = fields.map((field) => mass.mean(field));
  const gram = fields.map(() => new Float64Array(n));
  const weighted = fields.map(times);
  for (let i = 0; i < n; i += 4) {
    // Four rows at once, so that each field is read a quarter as often.
    const [a, b, c, d] = [0, 1, 2, 3].map((k) => weighted[Math.min(i + k, n - 1)]);
    for (let j = 0; j < Math.min(i + 4, n); j++) {
      const other = fields[j];
      let [p, q, s, t] = [0, 0, 0, 0];
      for (let k = 0; k < other.length; k++) {
        const w = other[k];
        p += a[k] * w;
        q += b[k] * w;
        s += c[k] * w;
        t += d[k] * w;
      }
      [p, q, s, t].slice(0, n - i).forEach((sum, k) => {
        gram[i + k][j] = sum - (mean[i + k] * mean[j]) / mass.area;
        gram[j][i + k] = gram[i + k][j];
      });
    }
  }
  const term = new Uint32Array(n);
  const share = new Float64Array(n);
  return {
    rms({ active, count, cases }, index) {
      const { force, motion } = cases[index];
      let m = 0;
      for (let i = 0; i < count; i++) {
        term[m] = active[i];
        share[m++] = force[i];
      }
      for (let k = 0; k < r; k++) {
        term[m] = columns.length + k;
        share[m++] = motion[k];
      }
      term[m] = columns.length + r + index;
      share[m++] = 1;
      let sum = 0;
      for (let i = 0; i < m; i++) {
        const row = gram[term[i]];
        let along = row[term[i]] * share[i];
        for (let j = 0; j < i; j++) along += 2 * row[term[j]] * share[j];
        sum += share[i] * along;
      }
      return Math.sqrt(Math.max(0, sum) / mass.area);
    },
  };
}
