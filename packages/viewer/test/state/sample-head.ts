import { checkHeadModel, type HeadModel } from '@flathead/solver';

/** A 2x2 head with four fasteners in the corners and two on the x axis. */
export const sampleHead: HeadModel = checkHeadModel({
  flathead: 1,
  name: 'sample',
  body: { outline: { rectangle: [60, 40], corner: 2 }, thickness: 4, material: 'alumina-96' },
  sites: { columns: 2, rows: 2, pitch: [14, 12], probes: { count: 100, field: [6, 6], preload: 0.1 } },
  fasteners: [
    { name: 'NW', at: [-25, 15], screw: 'M2.5' },
    { name: 'NE', at: [25, 15], screw: 'M2.5' },
    { name: 'SW', at: [-25, -15], screw: 'M2.5' },
    { name: 'SE', at: [25, -15], screw: 'M2.5' },
    { name: 'W', at: [-25, 0], screw: 'M2.5' },
    { name: 'E', at: [25, 0], screw: 'M2.5' },
  ],
  cases: [{ name: 'mounted' }],
  limits: { bow: 0.03 },
});
