import { Fault } from '../fault/fault.ts';
import type { HeadModel } from '../model/head-model.ts';
import { materialPresets } from '../model/materials.ts';
import { didYouMean } from '../plate/near-names.ts';

/** Keys and indices from the model down to a value. */
export type Place = readonly (string | number)[];

/** Most places that one path with `[*]` may stand for. */
const MOST = 1000;

/**
 * Places in a model that a path stands for, in the order of the model.
 *
 * Keys are joined by points; in brackets stands an index from 0, the `name` of an item, a key with a point in it, or `*` for
 * every item: `body.thickness`, `frame.ribs[0].width`, `fasteners[F1].at[0]`, `fasteners[*].preload`,
 * `materials[alumina-99.5].E`. The last key may be one that the model leaves out.
 *
 * @param model from {@link withMaterialOf}
 * @throws Fault SCHEMA when there is no such place, with the names that may have been meant
 */
export function placesOf(model: HeadModel, path: string): Place[] {
  const steps = stepsOf(path);
  let open: { readonly place: Place; readonly value: unknown }[] = [{ place: [], value: model }];
  steps.forEach((step, i) => {
    open = open.flatMap(({ place, value }) =>
      keysOf(value, step, place, path, i === steps.length - 1).map((key) => ({
        place: [...place, key],
        value: child(value, key),
      })),
    );
    if (open.length > MOST)
      throw new Fault('TOO_LARGE', `${path} stands for more than ${MOST} values. Name fewer of them.`, path, {
        expected: `at most ${MOST}`,
      });
  });
  return open.map(({ place }) => place);
}

/** Value at a place; undefined where the model leaves it out. */
export function valueAt(model: HeadModel, place: Place): unknown {
  return place.reduce<unknown>(child, model);
}

/** The tree with another value at a place. Unchecked: what comes out need not be a model. */
export function withValue(tree: unknown, [key, ...rest]: Place, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(tree)) return tree.map((item, i) => (i === key ? withValue(item, rest, value) : item));
  return { ...(typeof tree === 'object' ? tree : {}), [key]: withValue(child(tree, key), rest, value) };
}

/** The model with the preset that a path into `materials` names written out, so that its values can be changed. */
export function withMaterialOf(model: HeadModel, path: string): HeadModel {
  const [list, name] = stepsOf(path).map(({ text }) => text);
  if (list !== 'materials' || name === undefined || model.materials?.[name] !== undefined) return model;
  if (!Object.hasOwn(materialPresets, name)) return { ...model, materials: model.materials ?? {} };
  const { title: _title, basis: _basis, ...material } = materialPresets[name];
  return { ...model, materials: { ...model.materials, [name]: material } };
}

interface Step {
  readonly text: string;
  readonly inBrackets: boolean;
}

function stepsOf(path: string): Step[] {
  const steps: Step[] = [];
  const step = /(?:^|(?<!^)\.)([^.[\]]+)|(?<!^)\[([^\]]+)\]/gy;
  while (step.lastIndex < path.length) {
    const [found, key, bracketed] = step.exec(path) ?? [];
    if (found === undefined) return notAPath(path);
    steps.push({ text: (key ?? bracketed).trim(), inBrackets: key === undefined });
  }
  return steps.length === 0 ? notAPath(path) : steps;
}

function notAPath(path: string): never {
  throw new Fault(
    'SCHEMA',
    `"${path.slice(0, 200)}" is no path into a head model. Write keys with points between them, and indices or names in brackets, such as body.thickness or fasteners[F1].at[0].`,
    path.slice(0, 200),
    { value: path.slice(0, 200), expected: 'a path such as body.thickness' },
  );
}

function keysOf(value: unknown, { text, inBrackets }: Step, place: Place, path: string, isLast: boolean): Place {
  if (Array.isArray(value)) return indices(value, text, place, path);
  if (typeof value !== 'object' || value === null) return missing(text, [], place, path, 'nothing below it');
  const keys = Object.keys(value);
  if (text === '*' && inBrackets) return keys;
  if (Object.hasOwn(value, text)) return [text];
  // A key that is left out may still be set: whether it exists at all is for the schema to say.
  if (isLast && text !== '__proto__') return [text];
  const known = place.length === 1 && place[0] === 'materials' ? [...keys, ...Object.keys(materialPresets)] : keys;
  return missing(text, known, place, path, `the keys ${known.join(', ')}`);
}

function indices(items: readonly unknown[], text: string, place: Place, path: string): Place {
  if (text === '*') return items.map((_, i) => i);
  const names = items.map((item) => child(item, 'name')).map((name) => (typeof name === 'string' ? name : ''));
  const named = names.indexOf(text);
  if (named >= 0) return [named];
  const index = Number(text);
  if (/^\d+$/.test(text) && index < items.length) return [index];
  const known = names.filter((name) => name !== '');
  const numbered = items.length === 0 ? 'no items' : `items 0 to ${items.length - 1}`;
  return missing(text, known, place, path, known.length === 0 ? numbered : `${numbered}, named ${known.join(', ')}`);
}

function missing(text: string, known: readonly string[], place: Place, path: string, has: string): never {
  const owner = place.length === 0 ? 'The model' : place.join('.');
  throw new Fault('SCHEMA', `${owner} has no "${text}" for ${path}.${didYouMean(text, known)} It has ${has}.`, path, {
    value: text,
    expected: known,
  });
}

function child(value: unknown, key: string | number): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? Object.entries(value).find(([name]) => name === String(key))?.[1]
    : undefined;
}
