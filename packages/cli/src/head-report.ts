import type { CaseResult, CriterionVerdict, HeadResult, Outcome } from '@flathead/solver';
import { newtons, place, plain, um } from './format.ts';
import { table } from './table.ts';
import type { Paint } from './terminal.ts';

/** The verdict object of `flathead check --json`: plain numbers in mm and N, nothing per node. */
export function headJson({ name, verdict, cases, mesh, dofs, timings }: HeadResult): object {
  return {
    name,
    outcome: verdict.outcome,
    verdict,
    cases: cases.map(({ w: _w, deviation: _deviation, ...rest }) => rest),
    mesh: { nodes: mesh.x.length, elements: mesh.region.length, minAngle: mesh.minAngle },
    dofs,
    timings,
  };
}

/** What `flathead check` prints: a table of sites and one of fasteners for each case, then the verdict. */
export function headText(result: HeadResult, paint: Paint, verbose: boolean): string {
  const { name, verdict, cases, sites } = result;
  const limit = verdict.criteria.find(({ criterion }) => criterion === 'bow')!.limit;
  const counts = [
    counted(sites.length, 'site'),
    counted(cases[0].fasteners.length, 'fastener'),
    counted(cases.length, 'load case'),
  ];
  return [
    `${paint.bold(name)}  ${paint.dim(counts.join(', '))}`,
    ...cases.map((load) => caseText(load, limit, paint)),
    verdictText(result, paint),
    ...(verbose ? [workText(result, paint)] : []),
    '',
  ].join('\n\n');
}

function caseText({ name, sites, fasteners, load, bow }: CaseResult, limit: number, paint: Paint): string {
  const share = (value: number) => {
    const text = `${((100 * Math.abs(value)) / limit).toFixed(0)} %`;
    return Math.abs(value) > limit ? paint.red(text) : text;
  };
  return [
    `${paint.bold(`Case "${name}"`)}: ${newtons(load)} N on the sites, largest bow ${um(bow.value)} um at site ${bow.site}`,
    table(
      ['site', 'bow, um', 'of limit', 'at x, y, mm', 'flat within, um'],
      sites.map((site) => [site.name, um(site.bow), share(site.bow), place(site.at), um(site.flatness)]),
      paint,
    ),
    table(
      ['fastener', 'x, y, mm', 'reaction, N', 'seat moves, um', 'stiffness, N/mm'],
      fasteners.map(({ name, at, reaction, w, stiffness }) => [
        name,
        place(at),
        newtons(reaction),
        um(w),
        stiffness === null ? 'rigid' : plain(stiffness),
      ]),
      paint,
    ),
  ].join('\n');
}

function verdictText({ verdict }: HeadResult, paint: Paint): string {
  const mark: Readonly<Record<Outcome, string>> = {
    pass: paint.bold(paint.green('PASS')),
    marginal: paint.bold(paint.yellow('MARGINAL')),
    fail: paint.bold(paint.red('FAIL')),
  };
  return [
    `${mark[verdict.outcome]}  ${verdict.sentence}`,
    ...verdict.criteria.map(
      (criterion) =>
        `  ${verdict.criteria.length > 1 ? `${mark[criterion.outcome]}  ` : ''}${criterionText(criterion)}`,
    ),
    ...verdict.remarks.map((remark) => `  Note: ${remark}`),
  ].join('\n');
}

function criterionText(verdict: CriterionVerdict): string {
  const { criterion, unit, bound, value, limit, error, shearAdds, site, case: name } = verdict;
  const amount = unit === 'mm' ? um : plain;
  const least = unit === 'mm' ? 5e-6 : 0.005;
  const named = { mm: ' um', N: ' N', 1: '' }[unit];
  const spread = error === null ? '' : ` +- ${error < least ? 'less than 0.01' : amount(error)}`;
  const against = bound === 'most' ? 'against' : 'against at least';
  const shear = shearAdds === null || unit !== 'mm' ? '' : `; transverse shear adds ${um(shearAdds)} um`;
  const where = criterion === 'fasteners' ? `fastener ${site}` : `site ${site}`;
  return `${criterion} ${amount(value)}${spread}${named} ${against} ${amount(limit)}${named}, worst at ${where} in case "${name}"${shear}`;
}

function workText({ mesh, dofs, cases, timings }: HeadResult, paint: Paint): string {
  const known = cases.flatMap(({ residual }) => (residual === null ? [] : [residual]));
  const residual = known.length < cases.length ? null : Math.max(...known);
  return [
    `${counted(mesh.x.length, 'node')}, ${counted(mesh.region.length, 'element')}, ${dofs} unknowns, smallest angle ${mesh.minAngle.toFixed(1)} deg, ${residualText(residual)}`,
    timingText(timings, paint),
  ].join('\n');
}

/** A residual that was not computed is not zero. */
export function residualText(residual: number | null): string {
  return `scaled residual ${residual === null ? 'not computed' : residual.toExponential(1)}`;
}

/** Milliseconds by stage on one line. */
export function timingText(timings: Readonly<Record<string, number>>, paint: Paint): string {
  return paint.dim(
    Object.entries(timings)
      .map(([stage, ms]) => `${stage} ${ms.toFixed(ms < 10 ? 1 : 0)} ms`)
      .join(', '),
  );
}

export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
