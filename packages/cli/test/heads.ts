/** A small framed head of one site that is solved in no time; its bow is far inside the limit. */
export const stiff = {
  flathead: 1,
  name: 'One site',
  body: { outline: { rectangle: [30, 30] }, thickness: 4, material: 'alumina-96' },
  sites: { columns: 1, rows: 1, pitch: [10, 10], probes: { count: 100, field: [6, 6], preload: 0.05 } },
  fasteners: [
    { name: 'NW', at: [-11, 11], screw: 'M2' },
    { name: 'NE', at: [11, 11], screw: 'M2' },
    { name: 'S', at: [0, -11], screw: 'M2' },
  ],
  cases: [{ name: 'mounted' }, { name: 'touched', touched: ['A1'] }],
  limits: { bow: 0.01, flatness: 0.01 },
  mesh: { size: 1.5 },
};

/** The same of a soft material, against a limit it can't keep. */
export const soft = { ...stiff, name: 'Soft', body: { ...stiff.body, material: 'peek' }, limits: { bow: 0.001 } };

/** A simply supported square plate: w = 0.00406235 q a^4/D at its centre (Navier; Timoshenko & Woinowsky-Krieger, Table 8). */
export const square = {
  plate: 1,
  name: 'Simply supported square',
  outline: { rectangle: [100, 100] },
  section: { E: 200_000, nu: 0.3, thickness: 1 },
  edges: [{ along: 'all', held: 'simple' }],
  loads: [{ over: 'all', pressure: 0.001 }],
  mesh: { size: 5 },
  report: { at: [[0, 0]], over: { rectangle: [20, 20] } },
};
