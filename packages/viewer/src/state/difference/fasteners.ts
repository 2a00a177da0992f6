import type { Fastener, HeadModel } from '@flathead/solver';
import { coordinateText } from '../../format/number.ts';
import { type Change, listed, same } from './change.ts';
import { valueText } from './fields.ts';

/** More ways of moving than this are told as one. */
const MOST_MOVES = 4;
/** A move counts as in- or outwards when this share of it is. */
const RADIAL = 0.8;

const LABELS: Readonly<Record<string, readonly [label: string, unit: string]>> = {
  screw: ['screw', ''],
  bearing: ['bearing', ' mm'],
  stiffness: ['stiffness', ' N/mm'],
  acts: ['action', ''],
  grade: ['property class', ''],
  engagement: ['engaged thread', ' mm'],
  into: ['tapped material', ''],
  preload: ['preload', ' N'],
  torque: ['torque', ' N mm'],
  torqueFactor: ['torque factor', ''],
  scatter: ['scatter of the preload', ''],
};

/** Differences of the fasteners, which are known by their names. */
export function fastenerChanges(from: HeadModel, to: HeadModel): Change[] {
  const [before, after] = [byName(from.fasteners), byName(to.fasteners)];
  if (before.size < from.fasteners.length || after.size < to.fasteners.length)
    return same(from.fasteners, to.fasteners)
      ? []
      : [{ id: 'fasteners', words: 'fasteners changed', make: (model) => ({ ...model, fasteners: to.fasteners }) }];
  const both = from.fasteners.filter(({ name }) => after.has(name)).map(({ name }) => name);
  return [...members(from, to), ...moves(both, before, after, from), ...properties(both, before, after)];
}

function members(from: HeadModel, to: HeadModel): Change[] {
  const [before, after] = [from, to].map(({ fasteners }) => fasteners.map(({ name }) => name));
  if (same(before, after)) return [];
  const added = after.filter((name) => !before.includes(name));
  const removed = before.filter((name) => !after.includes(name));
  const say = (names: readonly string[], what: string): string[] =>
    names.length === 0 ? [] : [`${names.length === 1 ? 'fastener' : 'fasteners'} ${listed(names)} ${what}`];
  const words = [...say(added, 'added'), ...say(removed, 'removed')];
  return [
    {
      id: 'fasteners',
      words: words.length > 0 ? words.join(', ') : 'fasteners in another order',
      make(model) {
        const present = byName(model.fasteners);
        return { ...model, fasteners: to.fasteners.map((fastener) => present.get(fastener.name) ?? fastener) };
      },
    },
  ];
}

function moves(both: readonly string[], before: Named, after: Named, { sites }: HeadModel): Change[] {
  const moved = both.filter((name) => !same(before.get(name)!.at, after.get(name)!.at));
  const centre = sites.origin ?? [0, 0];
  const ways = new Map<string, string[]>();
  for (const name of moved) {
    const way = wayOf(before.get(name)!.at, after.get(name)!.at, centre);
    ways.set(way, [...(ways.get(way) ?? []), name]);
  }
  const make = (names: readonly string[]) =>
    withEach(names, (fastener) => ({ ...fastener, at: after.get(fastener.name)!.at }));
  if (ways.size > MOST_MOVES) {
    const lengths = moved.map((name) => distance(before.get(name)!.at, after.get(name)!.at));
    const [least, most] = [Math.min(...lengths), Math.max(...lengths)].map((length) => length.toFixed(1));
    return [
      { id: 'fasteners.at', words: `${moved.length} fasteners moved, ${least} to ${most} mm`, make: make(moved) },
    ];
  }
  return [...ways].map(([way, names]) => ({
    id: `fasteners.at ${names.join(' ')}`,
    words: `${listed(names)} moved ${way}`,
    make: make(names),
  }));
}

/** `6.2 mm inwards`, `3.0 mm along x`, or `3.0, -1.5 mm`. */
function wayOf(from: Place, to: Place, centre: Place): string {
  const length = distance(from, to);
  const closer = distance(from, centre) - distance(to, centre);
  const text = `${length.toFixed(1)} mm`;
  if (Math.abs(closer) >= RADIAL * length) return `${text} ${closer > 0 ? 'inwards' : 'outwards'}`;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  if (dy === 0 || dx === 0) return `${text} along ${dy === 0 ? 'x' : 'y'}`;
  return `${coordinateText(dx)}, ${coordinateText(dy)} mm`;
}

function properties(both: readonly string[], before: Named, after: Named): Change[] {
  const groups = new Map<string, { readonly key: string; readonly value: unknown; readonly names: string[] }>();
  for (const name of both) {
    const [a, b]: Record<string, unknown>[] = [{ ...before.get(name)! }, { ...after.get(name)! }];
    for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
      if (key === 'name' || key === 'at' || same(a[key], b[key])) continue;
      const [label, unit] = LABELS[key] ?? [key, ''];
      const [x, y] = [a, b].map((of) => valueText(of[key]) ?? (key === 'stiffness' ? 'estimated' : 'none'));
      const group = `${label} ${x} → ${y}${typeof (b[key] ?? a[key]) === 'number' ? unit : ''}`;
      const { names } = groups.get(group) ?? { names: [] };
      groups.set(group, { key, value: b[key], names: [...names, name] });
    }
  }
  return [...groups].map(([words, { key, value, names }]) => ({
    id: `fasteners.${key} ${names.join(' ')}`,
    words: `${listed(names)}: ${words}`,
    make: withEach(names, (fastener) => {
      const { [key]: _, ...others }: Record<string, unknown> = { ...fastener };
      const { name, at } = fastener;
      return { ...others, ...(value === undefined ? {} : { [key]: value }), name, at };
    }),
  }));
}

function withEach(names: readonly string[], change: (fastener: Fastener) => Fastener) {
  return (model: HeadModel): HeadModel => ({
    ...model,
    fasteners: model.fasteners.map((fastener) => (names.includes(fastener.name) ? change(fastener) : fastener)),
  });
}

type Place = readonly [number, number];
type Named = ReadonlyMap<string, Fastener>;

function byName(fasteners: readonly Fastener[]): Named {
  return new Map(fasteners.map((fastener) => [fastener.name, fastener]));
}

function distance(a: Place, b: Place): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
