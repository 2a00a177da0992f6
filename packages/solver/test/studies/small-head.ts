import { checkHeadModel } from '../../src/model/read.ts';

/**
 * A bare thin plate on four rigid fasteners that is solved in no time. Its bow is `C preload / t^3` to rounding: the load
 * goes with the preload, D with the cube of the thickness, and nothing else gives way.
 */
export const thinHead = checkHeadModel({
  flathead: 1,
  name: 'Thin',
  body: { outline: { rectangle: [40, 30] }, thickness: 4, material: 'peek' },
  sites: { columns: 2, rows: 1, pitch: [12, 12], probes: { count: 100, field: [6, 6], preload: 0.05 } },
  fasteners: [
    { name: 'NW', at: [-15, 11], bearing: 3, stiffness: 'rigid' },
    { name: 'NE', at: [15, 11], bearing: 3, stiffness: 'rigid' },
    { name: 'SW', at: [-15, -11], bearing: 3, stiffness: 'rigid' },
    { name: 'SE', at: [15, -11], bearing: 3, stiffness: 'rigid' },
  ],
  cases: [{ name: 'mounted' }],
  limits: { bow: 0.01 },
  theory: 'thin',
  mesh: { size: 3 },
});
