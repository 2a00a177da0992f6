import type { HeadModel } from '../../src/model/head-model.ts';

/** A sound head of four sites in a framed body, for tests to bend out of shape. */
export const twoByTwo: HeadModel = {
  flathead: 1,
  name: 'two by two',
  body: { outline: { rectangle: [52, 46], corner: 2 }, thickness: 4, material: 'alumina-96' },
  sites: {
    columns: 2,
    rows: 2,
    die: [6, 5],
    skip: [1, 1],
    probes: { count: 220, field: [4.5, 4], preload: 0.04, kind: 'floating' },
  },
  frame: {
    outer: { rectangle: [52, 46], corner: 2 },
    window: { rectangle: [30, 28], corner: 2 },
    material: 'stainless-17-4',
    thickness: 3,
    side: 'board',
    join: 'sliding',
  },
  fasteners: [
    { name: 'F1', at: [-21, 18], screw: 'M2.5' },
    { name: 'F2', at: [21, 18], screw: 'M2.5' },
    { name: 'F3', at: [-21, -18], screw: 'M2.5' },
    { name: 'F4', at: [21, -18], screw: 'M2.5' },
  ],
  cases: [{ name: 'mounted' }],
  limits: { bow: 0.03 },
};

/** A copy with the value at a path such as `fasteners.2.at` replaced; `undefined` removes the key. */
export function altered(model: HeadModel, changes: Readonly<Record<string, unknown>>): unknown {
  const copy = structuredClone<object>(model);
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.split('.');
    const last = keys.pop()!;
    const owner = keys.reduce((inner: object, key) => Reflect.get(inner, key), copy);
    if (value === undefined) Reflect.deleteProperty(owner, last);
    else Reflect.set(owner, last, value);
  }
  return copy;
}
