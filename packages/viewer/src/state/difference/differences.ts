import type { HeadModel } from '@flathead/solver';
import { valueAt } from '../set-value.ts';
import { type Change, listed, same } from './change.ts';
import { fastenerChanges } from './fasteners.ts';
import { fieldWords, spacingWords, TOGETHER } from './fields.ts';
import { ribWords } from './ribs.ts';

/** Order in which parts of the model are told of. Own materials go first, since other changes may need them. */
const PARTS = [
  'materials',
  'body',
  'sites',
  'frame',
  'fasteners',
  'seats',
  'keepOuts',
  'cases',
  'limits',
  'theory',
  'mesh',
];
/** Not of the head itself. */
const ASIDE = ['$schema', 'flathead', 'name', 'note'];
/** Lists told of by the names of their items. */
const NAMED: Readonly<Record<string, string>> = { seats: 'seat', keepOuts: 'keep-out', cases: 'load case' };
/** Values told of whole. */
const WHOLE = ['materials', 'mesh'];

/**
 * What makes one head another, each change in words and to be made on its own.
 *
 * All of them made, in whatever order, give the other head but for its name and note.
 */
export function differences(from: HeadModel, to: HeadModel): Change[] {
  const parts = [...PARTS, ...Object.keys({ ...from, ...to })].filter((part) => !ASIDE.includes(part));
  return [...new Set(parts)].flatMap((part) =>
    part === 'fasteners' ? fastenerChanges(from, to) : fieldChanges(from, to, part),
  );
}

/** The changes as one line of text. */
export function differenceText(changes: readonly Change[]): string {
  return changes.map(({ words }) => words).join('; ');
}

function fieldChanges(from: HeadModel, to: HeadModel, part: string): Change[] {
  const paths = changedPaths(valueAt(from, part), valueAt(to, part), part);
  const groups: string[][] = [];
  for (const path of paths) {
    const together = TOGETHER.find((group) => group.includes(path));
    const group = together && groups.find(([first]) => together.includes(first));
    if (group) group.push(path);
    else groups.push([path]);
  }
  return groups.map((group) => ({
    id: group[0],
    words:
      (group.length > 1 && spacingWords(from.sites, to.sites)) ||
      group.map((path) => pathWords(path, from, to)).join(', '),
    make: (model) => group.reduce((made, path) => withPath(made, path, valueAt(to, path)), model),
  }));
}

/** Paths of the outermost values that differ, down through objects that both have. */
function changedPaths(a: unknown, b: unknown, path: string): string[] {
  if (same(a, b)) return [];
  if (!isObject(a) || !isObject(b) || WHOLE.includes(path) || isShape(a) || isShape(b)) return [path];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) =>
    changedPaths(a[key], b[key], `${path}.${key}`),
  );
}

function pathWords(path: string, from: HeadModel, to: HeadModel): string {
  const [a, b] = [valueAt(from, path), valueAt(to, path)];
  if (path === 'frame.ribs') return ribWords(from, to);
  return path in NAMED ? listWords(NAMED[path], a, b) : fieldWords(path, a, b);
}

function listWords(noun: string, a: unknown, b: unknown): string {
  const [before, after] = [namedItems(a), namedItems(b)];
  const say = (names: readonly string[], what: string): string[] =>
    names.length === 0 ? [] : [`${noun}${names.length === 1 ? '' : 's'} ${listed(names)} ${what}`];
  const words = [
    ...say(
      [...after.keys()].filter((name) => !before.has(name)),
      'added',
    ),
    ...say(
      [...before.keys()].filter((name) => !after.has(name)),
      'removed',
    ),
    ...say(
      [...after].filter(([name, item]) => before.has(name) && !same(before.get(name), item)).map(([name]) => name),
      'changed',
    ),
  ];
  return words.length > 0 ? words.join(', ') : `${noun}s in another order`;
}

function namedItems(list: unknown): Map<string, unknown> {
  const items: unknown[] = Array.isArray(list) ? list : [];
  return new Map(items.map((item) => [isObject(item) ? String(item.name) : '', item]));
}

/** A model with one value taken from another model of the same schema; `undefined` removes the key. */
function withPath(model: HeadModel, path: string, value: unknown): HeadModel {
  return replaced({ ...model }, path.split('.'), value);
}

function replaced<T extends Record<string, unknown>>(object: T, [key, ...rest]: readonly string[], value: unknown): T {
  const child = object[key];
  const next = rest.length === 0 ? value : replaced({ ...(isObject(child) ? child : {}) }, rest, value);
  const copy = { ...object, [key]: next };
  if (next === undefined) delete copy[key];
  return copy;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isShape(value: Record<string, unknown>): boolean {
  return 'rectangle' in value || 'circle' in value || 'polygon' in value;
}
