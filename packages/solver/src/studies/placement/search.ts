import type { Point } from '../../geometry/point.ts';
import { type Choice, compositions, enumeration, isClear, waysToChoose } from './choices.ts';
import type { Judge } from './judge.ts';
import { seeded } from './seeded.ts';
import { randomSlots, type Slot, spread } from './starts.ts';

/** A placement on the grid: the orbits of each group. */
export interface Found {
  readonly value: number;
  readonly chosen: readonly number[];
  readonly orbits: readonly Slot[];
}

/** How the best was found. */
export interface Search {
  readonly isExhaustive: boolean;
  /** Placements tried when exhaustive: those that keep the spacing. 0 otherwise. */
  readonly placements: number;
  /** Of a local search; 0 when exhaustive. */
  readonly starts: number;
  /** Starts that ended at the best value. */
  readonly again: number;
  /** Best first, distinct; a few. Empty when no placement holds the plate. */
  readonly found: readonly Found[];
}

export interface SearchOptions {
  readonly seed: number;
  readonly starts: number;
  /** Ways up to which all are tried. */
  readonly most: number;
  readonly spacing: number;
}

/** What a search says while it runs: how far it is, 0 to 1, and what is better than before. */
export interface SearchStep {
  readonly done: number;
  readonly better: Found | null;
}

/** Placements between two steps of an exhaustive search. */
const STRIDE = 20_000;
/** Further placements that are kept beside the best. */
const KEPT = 8;
/** An improvement smaller than this share of the value is rounding. */
const ROUNDING = 1e-9;

/**
 * The best placement on the grid: all of them where there are few enough, else a local search from seeded starts, in
 * which one orbit at a time goes wherever the value is least, until no single move helps.
 *
 * @param at of each candidate
 * @param shift from a candidate to its column in the stands of the judge
 */
export function* searchGrid(
  judge: Judge,
  choices: readonly Choice[],
  at: readonly Point[],
  shift: number,
  options: SearchOptions,
): Generator<SearchStep, Search, void> {
  const ways = waysToChoose(choices);
  if (ways <= options.most) return yield* tryAll(judge, choices, at, shift, options, ways);
  return yield* descend(judge, choices, at, shift, options);
}

/** Whether {@link searchGrid} has a placement to begin with that keeps the spacing. */
export function hasPlacement(
  choices: readonly Choice[],
  at: readonly Point[],
  { seed, starts, most, spacing }: SearchOptions,
): boolean {
  if (waysToChoose(choices) <= most) return enumeration(choices, at, spacing)() !== null;
  const random = seeded(seed);
  const makeups = choices.map(compositions);
  return Array.from({ length: starts }).some((_, i) => randomSlots(choices, makeups, i, at, spacing, random) !== null);
}

function* tryAll(
  judge: Judge,
  choices: readonly Choice[],
  at: readonly Point[],
  shift: number,
  { spacing }: SearchOptions,
  ways: number,
): Generator<SearchStep, Search, void> {
  const next = enumeration(choices, at, spacing);
  let found: Found[] = [];
  let best = Infinity;
  let tried = 0;
  const columns = new Uint32Array(choices.reduce((sum, { count }) => sum + count, 0));
  for (let chosen = next(); chosen !== null; chosen = next()) {
    tried++;
    for (let i = 0; i < columns.length; i++) columns[i] = chosen[i] + shift;
    const value = judge.value(columns, best * (1 - ROUNDING));
    if (value < best * (1 - ROUNDING)) {
      best = value;
      const better = { value, chosen: [...chosen], orbits: orbitsIn(choices, chosen) };
      found = [better, ...found.slice(0, KEPT - 1)];
      yield { done: Math.min(1, tried / ways), better };
    } else if (tried % STRIDE === 0) yield { done: Math.min(1, tried / ways), better: null };
  }
  return { isExhaustive: true, placements: tried, starts: 0, again: 0, found };
}

/** The orbits that make up a placement of {@link enumeration}, in its order. */
function orbitsIn(choices: readonly Choice[], chosen: Uint32Array): Found['orbits'] {
  const orbits: Slot[] = [];
  let from = 0;
  choices.forEach(({ orbits: all, count }, group) => {
    for (const end = from + count; from < end; ) {
      const orbit = all.find(({ points }) => points.every((point, k) => point === chosen[from + k]))!;
      orbits.push({ group, orbit });
      from += orbit.points.length;
    }
  });
  return orbits;
}

function* descend(
  judge: Judge,
  choices: readonly Choice[],
  at: readonly Point[],
  shift: number,
  { seed, starts, spacing }: SearchOptions,
): Generator<SearchStep, Search, void> {
  const random = seeded(seed);
  const makeups = choices.map(compositions);
  const ends: Found[] = [];
  let best = Infinity;
  for (let start = 0; start < starts; start++) {
    const begun = randomSlots(choices, makeups, start, at, spacing, random);
    if (begun === null) continue;
    // Every other start is spread out first: even, or by chance.
    let slots: Slot[] = start % 2 === 0 ? spread(begun, choices, at, spacing) : begun;
    let value = Infinity;
    for (let improved = true; improved; ) {
      improved = false;
      for (let s = 0; s < slots.length; s++) {
        const { group, orbit } = slots[s];
        const others: number[] = slots.flatMap((slot, k) => (k === s ? [] : [...slot.orbit.points]));
        const size = orbit.points.length;
        const columns = Uint32Array.from([...others, ...orbit.points], (point) => point + shift);
        let kept = orbit;
        if (value === Infinity) value = judge.value(columns, Infinity);
        for (const trial of choices[group].orbits) {
          if (trial.points.length !== size || trial === orbit) continue;
          if (trial.points.some((point) => !isClear(at, others, others.length, point, spacing))) continue;
          trial.points.forEach((point, k) => {
            columns[others.length + k] = point + shift;
          });
          const trialValue = judge.value(columns, value * (1 - ROUNDING));
          if (!(trialValue < value * (1 - ROUNDING))) continue;
          value = trialValue;
          kept = trial;
        }
        if (kept === orbit) continue;
        improved = true;
        slots = slots.with(s, { group, orbit: kept });
      }
      yield { done: start / starts, better: null };
    }
    if (value === Infinity) continue;
    const end = { value, chosen: slots.flatMap(({ orbit }) => [...orbit.points]), orbits: slots };
    ends.push(end);
    const isBetter = value < best * (1 - ROUNDING);
    best = Math.min(best, value);
    yield { done: (start + 1) / starts, better: isBetter ? end : null };
  }
  const again = ends.filter(({ value }) => value <= best * (1 + 1e-6)).length;
  return { isExhaustive: false, placements: 0, starts, again, found: distinct(ends) };
}

/** Best first, those of one set of positions once. */
function distinct(ends: readonly Found[]): Found[] {
  const seen = new Set<string>();
  return [...ends]
    .sort((a, b) => a.value - b.value)
    .filter(({ chosen }) => {
      const key = [...chosen].sort((a, b) => a - b).join();
      return !seen.has(key) && seen.add(key);
    })
    .slice(0, KEPT);
}
