import type { HeadModel, Rib } from '@flathead/solver';
import { fieldText } from '../../format/number.ts';
import { same } from './change.ts';

/** Ribs that differ, in words: those of gaps by rows and columns, those along lines counted. */
export function ribWords(from: HeadModel, to: HeadModel): string {
  const [before, after] = [from.frame?.ribs ?? [], to.frame?.ribs ?? []];
  const words = [
    ...gapWords(before, after, 'columns'),
    ...gapWords(before, after, 'rows'),
    ...lineWords(before, after),
  ];
  return words.length > 0 ? words.join(', ') : 'ribs in another order';
}

function gapWords(before: readonly Rib[], after: readonly Rib[], between: 'columns' | 'rows'): string[] {
  const [a, b] = [before, after].map((ribs) => ribs.filter((rib) => 'between' in rib && rib.between === between));
  if (same(a, b)) return [];
  const name = `ribs between ${between}`;
  if (a.length === 0) return [`${name} added, ${b.map(({ width }) => fieldText(width)).join(' and ')} mm wide`];
  if (b.length === 0) return [`${name} removed`];
  if (a.length > 1 || b.length > 1) return [`${name} changed`];
  const [[x], [y]] = [a, b];
  const parts = [
    ...(x.width === y.width ? [] : [`${fieldText(x.width)} → ${fieldText(y.width)} mm wide`]),
    ...(x.thickness === y.thickness ? [] : [`${thickness(x)} → ${thickness(y)} thick`]),
    ...(same(skipped(x), skipped(y))
      ? []
      : [skipped(y).length === 0 ? 'in every gap' : `not in gap ${skipped(y).join(', ')}`]),
  ];
  return [`${name} ${parts.length > 0 ? parts.join(', ') : 'changed'}`];
}

function lineWords(before: readonly Rib[], after: readonly Rib[]): string[] {
  const [a, b] = [before, after].map((ribs) => ribs.filter((rib) => 'from' in rib));
  const added = b.filter((rib) => !a.some((other) => same(rib, other))).length;
  const removed = a.filter((rib) => !b.some((other) => same(rib, other))).length;
  const changed = Math.min(added, removed);
  const say = (count: number, what: string): string[] =>
    count === 0 ? [] : [`${count} ${count === 1 ? 'rib' : 'ribs'} ${what}`];
  return [...say(changed, 'changed'), ...say(added - changed, 'added'), ...say(removed - changed, 'removed')];
}

function thickness({ thickness: own }: Rib): string {
  return own === undefined ? 'as the frame' : `${fieldText(own)} mm`;
}

function skipped(rib: Rib): readonly number[] {
  return 'skip' in rib ? (rib.skip ?? []) : [];
}
