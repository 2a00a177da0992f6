import type { StudyName } from '@flathead/solver';

/** What a study is going to give, and how many heads it solves for it. */
export interface Outlook {
  readonly gives: readonly string[];
  /** `null` where that is not known before. */
  readonly heads: number | null;
}

type Plan = Readonly<Record<string, unknown>>;

const OPENS = 'Every point opens as a variant on the shelf.';

/** @param plan of the study, as it is sent */
export function outlookOf(study: StudyName, plan: Plan): Outlook {
  switch (study) {
    case 'placement':
      return {
        gives: [
          'The best places that were found, on a map, with the bow as it was and as placed.',
          'How they were found: of how many placements they are the best, or how many searches agree.',
          ...(plan.curve === undefined ? [] : ['A curve of the best bow over what else is compared.']),
        ],
        heads: null,
      };
    case 'sweep': {
      const counts = list(plan.vary).map(countOf);
      return {
        gives: [
          counts.length > 1
            ? 'A map of the bow over both numbers.'
            : 'A curve of the bow, with the head as it is and the limit.',
          'The value from which on the head passes, its numerical error counted.',
          OPENS,
        ],
        heads: counts.reduce((product, count) => product * count, 1),
      };
    }
    case 'tolerance': {
      const causes = list(plan.vary).length;
      const samples = Number(plan.samples);
      return {
        gives: [
          'How many heads fail, of those solved and of all.',
          'How the bow scatters, with percentiles.',
          ...(plan.indices === true ? ['Which cause the scatter comes from, the greatest first.'] : []),
        ],
        heads: plan.indices === true ? samples * (causes + 2) : samples,
      };
    }
    case 'sites':
      return {
        gives: [
          'A point for each pattern: bow over touchdowns for a wafer.',
          'A table of size, verdict, touchdowns and dies off the wafer.',
          OPENS,
        ],
        heads: list(plan.patterns).length,
      };
  }
}

/** Time that a head took on its one mesh, s, as for a row of a study; the total counts the mesh of its error as well. */
export function onceSolved({ total: _, ...stages }: Readonly<Record<string, number>>): number {
  return Object.values(stages).reduce((sum, ms) => sum + ms, 0) / 1000;
}

/** Time in the words of someone who waits: `about 20 s`, `about 3 min`. */
export function aboutTime(seconds: number): string {
  if (seconds < 1.5) return 'about a second';
  if (seconds < 90) {
    const step = seconds < 10 ? 1 : seconds < 30 ? 5 : 10;
    return `about ${Math.max(2, Math.round(seconds / step) * step)}\u00a0s`;
  }
  return `about ${Math.round(seconds / 60)}\u00a0min`;
}

/**
 * Time that is left, at the pace so far, s; `null` while that says little.
 *
 * @param elapsed s
 */
export function timeLeft(made: number, total: number, elapsed: number): number | null {
  return made < 4 || elapsed < 1 ? null : (elapsed / made) * (total - made);
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function countOf(axis: unknown): number {
  const values: unknown = typeof axis === 'object' && axis !== null ? Reflect.get(axis, 'values') : [];
  if (Array.isArray(values)) return values.length;
  return typeof values === 'object' && values !== null ? Number(Reflect.get(values, 'count')) : 1;
}
