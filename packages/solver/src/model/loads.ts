import { Fault } from '../fault/fault.ts';
import type { Site } from '../layout/site.ts';
import type { PlateLoad, PlateProblem } from '../plate/plate-problem.ts';
import type { HeadModel, Probes } from './head-model.ts';
import type { HeadLoadCase } from './load-cases.ts';
import type { SiteProbes } from './site-probes.ts';

type PlateFoundation = NonNullable<PlateProblem['foundations']>[number];

/** Sites with what presses on them, in one order. */
interface ProbedSites {
  readonly sites: readonly Site[];
  readonly siteProbes: readonly SiteProbes[];
}

/** Most sets of sites on springs: each takes a factor of its own, in time and memory. */
const MOST_FOUNDATIONS = 24;

/**
 * Whether the probes of a site press on the head. Where a device has touched down, floating probes lie between device
 * and board and relieve the head; shouldered ones bear on it and leave it loaded.
 *
 * A touched shouldered probe counts with its whole preload: what its device end pushes back to the board is not
 * credited, which is on the safe side for the bow (common practice, no source).
 */
export function isLoaded(probes: Probes, { touched }: HeadLoadCase, site: string): boolean {
  return probes.kind === 'shouldered' || !touched.has(site);
}

/**
 * Loads of a case: the board-side preload of all its probes pushes each loaded site away from the board (+z), spread
 * over the probe field, or at each of its probes where they are listed.
 */
export function caseLoads(
  { sites: { probes } }: HeadModel,
  { sites, siteProbes }: ProbedSites,
  load: HeadLoadCase,
): PlateLoad[] {
  return sites.flatMap((site, i): PlateLoad[] => {
    if (!isLoaded(probes, load, site.name)) return [];
    const { points, preload: force } = siteProbes[i];
    if (points === null) return [{ over: fieldShape(site), force }];
    return force === 0 ? [] : [{ points, force }];
  });
}

/**
 * Springs of a case whose probes relax: a probe whose seat moves by w away from the board loses `rate w` of its
 * preload, so a loaded site stands on a foundation of modulus `rate count / field area`, N/mm3, that is free of force at
 * w = preload / rate. The board is taken as flat and unmoved (common practice, no source). Springs also pull where w is
 * beyond that; see the remark on lost contact. The springs of listed probes too are spread evenly over their field.
 */
export function caseFoundations(
  model: HeadModel,
  { sites, siteProbes }: ProbedSites,
  load: HeadLoadCase,
): PlateFoundation[] {
  const { relax = false, rate } = model.sites.probes;
  if (!relax || rate === undefined) return [];
  return sites.flatMap((site, i) => {
    if (!isLoaded(model.sites.probes, load, site.name)) return [];
    const { count } = siteProbes[i];
    return [{ over: fieldShape(site), modulus: (rate * count) / (site.field[0] * site.field[1]) }];
  });
}

/**
 * Makes sure that probes say what is asked of them.
 *
 * @throws Fault SCHEMA when relaxation or a limit on contact force lacks the rate; OUT_OF_RANGE when a device could not
 *   lift floating probes off their lip
 */
export function requireProbeData({ sites: { probes }, limits, cases }: HeadModel): void {
  const { relax, rate, kind, preload, touchdown } = probes;
  const needs = relax ? '"relax": true' : limits.contactForce !== undefined ? 'limits.contactForce' : null;
  if (needs !== null && rate === undefined)
    throw new Fault(
      'SCHEMA',
      `${needs} needs the spring rate of the probes, which sites.probes does not give. Add "rate" in N/mm.`,
      'sites.probes.rate',
      { expected: 'N/mm' },
    );
  const touching = cases.some(({ touched = [] }) => !Array.isArray(touched) || touched.length > 0);
  if (touching && kind !== 'shouldered' && touchdown !== undefined && touchdown < preload)
    throw new Fault(
      'OUT_OF_RANGE',
      `Floating probes with a touchdown force of ${touchdown} N stay on their lip, which holds back a preload of ${preload} N, so a touched site would not be relieved. Raise touchdown to ${preload} N or more, or lower preload.`,
      'sites.probes.touchdown',
      { value: touchdown, expected: `at least ${preload}` },
    );
}

/** @throws Fault TOO_LARGE when relaxing probes would need too many factors */
export function requireFewFoundations(model: HeadModel, cases: readonly HeadLoadCase[]): void {
  const { relax, kind } = model.sites.probes;
  if (!relax || kind === 'shouldered') return;
  const distinct = new Set(cases.map(({ touched }) => [...touched].sort().join(' '))).size;
  if (distinct <= MOST_FOUNDATIONS) return;
  throw new Fault(
    'TOO_LARGE',
    `Floating probes that relax are solved anew for each set of touched sites, and the cases have ${distinct} of them. Turn "relax" off, or name up to ${MOST_FOUNDATIONS} sets that matter in "touched".`,
    'sites.probes.relax',
    { value: distinct, expected: `at most ${MOST_FOUNDATIONS} sets of touched sites` },
  );
}

function fieldShape({ centre: [x, y], field: [width, height] }: Site) {
  return { rectangle: [width, height] as [number, number], centre: [x, y] as [number, number] };
}
