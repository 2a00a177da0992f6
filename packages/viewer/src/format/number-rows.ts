import type { CaseResult, FastenerResult, PartStrength, SeatResult, SiteResult } from '@flathead/solver';
import { coordinateText, forceDigits, probabilityDigits, signedMicrometres, stressDigits } from './number.ts';

/** Heads of the columns and cells of the rows of a table, the name of each row first. */
export interface NumberRows {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Rows of sites beyond this are left out, the smallest bows first. */
const MOST_SITES = 100;

const NONE = '\u2013';

/** What each fastener carries, and what that leaves of its joint where one of them has a preload. */
export function fastenerRows(fasteners: readonly FastenerResult[]): NumberRows {
  const joints = fasteners.some(({ joint }) => joint !== null);
  return {
    columns: [
      ...['Name', 'holds back, N', 'seat moves, µm'],
      ...(joints ? ['screw, N', 'clamp left, N', 'of proof, %', 'of thread, %'] : []),
    ],
    rows: fasteners.map(({ name, reaction, w, holds, joint }) => [
      ...[name, holds ? forceDigits(-reaction) : 'let go', signedMicrometres(w)],
      ...(joints
        ? joint === null
          ? [NONE, NONE, NONE, NONE]
          : [
              range(joint.screwForce),
              joint.opens ? `opens, ${range(joint.clampLeft)}` : range(joint.clampLeft),
              percent(joint.proofRatio),
              joint.strippingRatio === null ? NONE : percent(joint.strippingRatio),
            ]
        : []),
    ]),
  };
}

/** Bow, flatness and contact left of each site; the largest bows where there are too many. */
export function siteRows(sites: readonly SiteResult[]): NumberRows {
  const contact = sites.some((site) => site.contact !== undefined);
  const shown =
    sites.length > MOST_SITES
      ? sites.toSorted((a, b) => Math.abs(b.bow) - Math.abs(a.bow)).slice(0, MOST_SITES)
      : sites;
  const least = (end: { readonly minimum: number } | null | undefined) => (end ? contactDigits(end.minimum) : NONE);
  return {
    columns: ['Name', 'bow, µm', 'flatness, µm', ...(contact ? ['least at board, N', 'least at device, N'] : [])],
    rows: shown.map((site) => [
      ...[site.name, signedMicrometres(site.bow), signedMicrometres(site.flatness).replace('+', '')],
      ...(contact ? [least(site.contact?.board), least(site.contact?.device)] : []),
    ]),
  };
}

/** Largest stress of body and frame, and how far from breaking or yielding they are. */
export function partRows(parts: readonly PartStrength[]): NumberRows {
  return {
    columns: ['Part', 'stress, MPa', 'at x, y, mm', 'strength, MPa', 'factor', 'fails with'],
    rows: parts.map(({ part, measure, stress, at, face, fastener, strength, factor, failureProbability }) => [
      `${part}, ${measure === 'principal' ? 'tension' : measure}`,
      stressDigits(stress),
      fastener === null
        ? `${coordinateText(tenth(at[0]))}, ${coordinateText(tenth(at[1]))} ${face} side`
        : `bearing of ${fastener}`,
      strength === null ? NONE : stressDigits(strength),
      factor === null ? NONE : stressDigits(factor),
      failureProbability === null ? NONE : probabilityDigits(failureProbability),
    ]),
  };
}

/** What each seat of the board carries, and how much of it the head has left. */
export function seatRows(seats: readonly SeatResult[]): NumberRows {
  return {
    columns: ['Name', 'force, N', 'pressure, MPa', 'lifted off, %'],
    rows: seats.map(({ name, force, pressure, lifted }) => [
      name,
      forceDigits(force),
      stressDigits(pressure),
      (100 * lifted).toFixed(0),
    ]),
  };
}

/** What the case is in one line: `probes press with 302 N, site area tilts 12.3 µm in 100 mm`. */
export function caseLine({ load, tilt }: CaseResult): string {
  return `probes press with ${forceDigits(load)} N, sites tilt ${signedMicrometres(tilt.slope * 100).replace('+', '')} µm in 100 mm`;
}

function range({ low, high }: { readonly low: number; readonly high: number }): string {
  const [from, to] = [forceDigits(low), forceDigits(high)];
  return from === to ? from : `${from} to ${to}`;
}

/** Forces of one probe are small. */
function contactDigits(force: number): string {
  return force.toFixed(force >= 1 ? 2 : 3);
}

function percent(share: number): string {
  return (100 * share).toFixed(share >= 0.1 ? 0 : 1);
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
