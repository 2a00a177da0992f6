import type { CaseResult, HeadResult } from '@flathead/solver';
import type { Solved } from './run-store.ts';

/** What the bow takes of the force of the probes at the board, in the case shown. */
export interface ShownContact {
  /** `[nNodes]` force lost by a probe that stood there, N; at most its preload, where contact is lost. */
  readonly lost: Float64Array;
  /** Least force left in each site, N, by its name; `null` where the model does not give it. */
  readonly left: ReadonlyMap<string, number | null>;
  /** What may be lost, N: down to the least contact force asked for; `null` where the model asks for none. */
  readonly allowed: number | null;
  /** What there is to lose, N. */
  readonly preload: number;
}

/**
 * A probe is a spring that loses rate times deflection. Those of floating sites that are touched press as the device sets
 * them, however the head bows.
 *
 * @returns `null` where the model does not give the rate, or no preload
 */
export function shownContact({ model, result }: Solved, shown: CaseResult): ShownContact | null {
  const { preload, rate, kind } = model.sites.probes;
  if (rate === undefined || preload === 0) return null;
  const lost = shown.w.map((w) => Math.min(preload, rate * w));
  const left = new Map(shown.sites.map(({ name, contact }) => [name, contact?.board?.minimum ?? null]));
  if (kind !== 'shouldered') {
    const touched = shown.sites.filter(({ contact }) => !contact?.board || contact.device !== null);
    clear(lost, result, new Set(touched.map(({ name }) => name)));
  }
  const least = model.limits.contactForce ?? preload;
  return { lost, left, allowed: least < preload ? preload - least : null, preload };
}

/** Sites within this share of the least force share it, and the first of them gives its name, as with the bow. */
const TIE = 1e-3;

/** Name of the site that keeps the least force; `null` where none is known. */
export function leastContact({ left }: Pick<ShownContact, 'left'>): string | null {
  const known = [...left].filter((entry): entry is [string, number] => entry[1] !== null);
  const least = Math.min(...known.map(([, force]) => force));
  return known.find(([, force]) => force <= least * (1 + TIE))?.[0] ?? null;
}

function clear(lost: Float64Array, { mesh, sites }: HeadResult, names: ReadonlySet<string>): void {
  for (const { name, centre, field } of sites) {
    if (!names.has(name)) continue;
    for (let v = 0; v < lost.length; v++)
      if (Math.abs(mesh.x[v] - centre[0]) <= field[0] / 2 && Math.abs(mesh.y[v] - centre[1]) <= field[1] / 2)
        lost[v] = 0;
  }
}
