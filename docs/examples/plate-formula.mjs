// A square plate, simply supported, under an even pressure.
import assert from 'node:assert/strict';
import { solvePlate } from '@flathead/solver';

const [a, t, q, E, nu] = [100, 1, 0.001, 200_000, 0.3];
const { w, error } = solvePlate({
  plate: 1,
  outline: { rectangle: [a, a] },
  section: { E, nu, thickness: t },
  edges: [{ along: 'all', held: 'simple' }],
  loads: [{ over: 'all', pressure: q }],
  theory: 'thin',
  report: { at: [[0, 0]] },
});
console.log(`w = ${w.at[0].toFixed(5)} mm at the centre`, error);

// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), table 8: w = 0.00406 q a^4/D.
const D = (E * t ** 3) / (12 * (1 - nu ** 2));
assert.ok(Math.abs(w.at[0] / ((0.00406 * q * a ** 4) / D) - 1) < 0.005);
