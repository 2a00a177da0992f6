import { checkHeadModel, type HeadModel, type Material, materialPresets, type Rib, type Shape } from '@flathead/solver';
import { valueAt, withValue } from './set-value.ts';
import { boxOf } from './shape-box.ts';

/** The model with one thing more at the end of a list of it. */
export function withItem(model: HeadModel, path: string, item: unknown): HeadModel {
  const list = valueAt(model, path);
  return checkHeadModel(withValue(model, path, [...(Array.isArray(list) ? list : []), item]));
}

/** The model without one thing of a list; an empty list is left out. */
export function withoutItem(model: HeadModel, path: string, index: number): HeadModel {
  const list = valueAt(model, path);
  const left = Array.isArray(list) ? list.filter((_, i) => i !== index) : [];
  return checkHeadModel(withValue(model, path, left.length > 0 ? left : undefined));
}

export type ShapeKind = 'rectangle' | 'circle' | 'polygon';

export function shapeKind(shape: Shape): ShapeKind {
  if ('rectangle' in shape) return 'rectangle';
  return 'circle' in shape ? 'circle' : 'polygon';
}

/** A shape of another kind about the same place and as large. */
export function asKind(shape: Shape, kind: ShapeKind): Shape {
  if (shapeKind(shape) === kind) return shape;
  const [width, height] = boxOf(shape);
  const [x, y] = middleOf(shape);
  const centre = x === 0 && y === 0 ? {} : { centre: [x, y] satisfies [number, number] };
  if (kind === 'rectangle') return { rectangle: [width, height], ...centre };
  if (kind === 'circle') return { circle: Math.max(width, height), ...centre };
  const corner = (sx: number, sy: number): [number, number] => [x + (sx * width) / 2, y + (sy * height) / 2];
  return { polygon: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)] };
}

/** Middle of a shape: of the box around a polygon. */
function middleOf(shape: Shape): readonly [number, number] {
  if (!('polygon' in shape)) return shape.centre ?? [0, 0];
  const middle = (axis: 0 | 1): number => {
    const values = shape.polygon.map((corner) => corner[axis]);
    return (Math.min(...values) + Math.max(...values)) / 2;
  };
  return [middle(0), middle(1)];
}

/** A new keep-out beside the fasteners, where it is seen and in nobody's way: off the head on the far side. */
export function newKeepOut({ keepOuts = [], body, frame }: HeadModel): object {
  const [, height] = boxOf(frame?.outer ?? body.outline);
  const names = new Set(keepOuts.map(({ name }) => name));
  let i = 1;
  while (names.has(`keep-out ${i}`)) i++;
  return { name: `keep-out ${i}`, shape: { rectangle: [10, 5], centre: [0, Math.round(height / 2)] }, clearance: 0.5 };
}

/** A small round opening near a corner of the body, clear of the sites. */
export function newOpening({ body }: HeadModel): Shape {
  const [width, height] = boxOf(body.outline);
  const [x, y] = middleOf(body.outline);
  const inset = Math.min(width, height) / 10;
  const tenth = (value: number): number => Math.round(10 * value) / 10;
  return { circle: tenth(inset), centre: [tenth(x + width / 2 - 1.5 * inset), tenth(y + height / 2 - 1.5 * inset)] };
}

/** A rib from edge to edge of the window through its middle. */
export function newFreeRib({ frame, sites }: HeadModel): Rib {
  const [x, y] = frame === undefined ? [0, 0] : middleOf(frame.window);
  const reach = frame === undefined ? 10 : boxOf(frame.window)[1] / 2;
  const gap = sites.columns % 2 === 0 ? 0 : boxOf(frame?.window ?? { circle: 0 })[0] / 2 - 1;
  return { from: [x + gap, y - reach], to: [x + gap, y + reach], width: 2 };
}

/** A material of the engineer's own to start from: the values of the body under a new name. */
export function withOwnMaterial(model: HeadModel): HeadModel {
  const own = model.materials ?? {};
  const { material: name } = model.body;
  const like: Material = own[name] ?? (Object.hasOwn(materialPresets, name) ? plain(name) : { E: 3e5, nu: 0.22 });
  let i = 1;
  while (Object.hasOwn(own, `material ${i}`)) i++;
  return checkHeadModel({ ...model, materials: { ...own, [`material ${i}`]: like } });
}

function plain(name: string): Material {
  const { title: _, basis: __, source: ___, ...values } = materialPresets[name];
  return values;
}

/** The model without an own material that no part has. */
export function withoutMaterial(model: HeadModel, name: string): HeadModel {
  const { [name]: _, ...left } = model.materials ?? {};
  const { materials: __, ...bare } = model;
  return Object.keys(left).length > 0 ? { ...bare, materials: left } : bare;
}

/** An own material under another name, wherever it is used. The same model where the name is empty or taken. */
export function withMaterialNamed(model: HeadModel, name: string, next: string): HeadModel {
  const own = model.materials ?? {};
  if (next.trim() === '' || Object.hasOwn(own, next) || !Object.hasOwn(own, name)) return model;
  const renamed = (used: string): string => (used === name ? next : used);
  return checkHeadModel({
    ...model,
    materials: Object.fromEntries(Object.entries(own).map(([key, value]) => [renamed(key), value])),
    body: { ...model.body, material: renamed(model.body.material) },
    ...(model.frame ? { frame: { ...model.frame, material: renamed(model.frame.material) } } : {}),
    fasteners: model.fasteners.map((fastener) =>
      fastener.into === undefined ? fastener : { ...fastener, into: renamed(fastener.into) },
    ),
  });
}

/** Parts that are of a material. */
export function usersOf({ body, frame, fasteners }: HeadModel, name: string): string[] {
  return [
    ...(body.material === name ? ['body'] : []),
    ...(frame?.material === name ? ['frame'] : []),
    ...(fasteners.some(({ into }) => into === name) ? ['fasteners'] : []),
  ];
}
