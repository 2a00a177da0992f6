import type { CaseResult, CriterionVerdict, HeadResult, Outcome } from '@flathead/solver';
import { caseCount, printedCases } from './case-families.ts';
import { contactCells, contactHeadings } from './contact-columns.ts';
import { complianceTable, fastenerTable, seatTable } from './fastener-report.ts';
import { newtons, place, plain, um } from './format.ts';
import { strengthText } from './strength-text.ts';
import { table } from './table.ts';
import type { Paint } from './terminal.ts';

/** The verdict object of `flathead check --json`: plain numbers in mm and N, nothing per node. */
export function headJson({ name, verdict, cases, mesh, dofs, timings }: HeadResult): object {
  return {
    name,
    outcome: verdict.outcome,
    verdict,
    cases: cases.map(({ w: _w, deviation: _deviation, strength, ...rest }) => ({
      ...rest,
      strength: strength?.parts ?? null,
    })),
    mesh: { nodes: mesh.x.length, elements: mesh.region.length, minAngle: mesh.minAngle },
    dofs,
    timings,
  };
}

/** What `flathead check` prints: a table of sites and one of fasteners for each case, then the verdict. */
export function headText(result: HeadResult, paint: Paint, verbose: boolean): string {
  const { name, verdict, cases, sites } = result;
  const limit = verdict.criteria.find(({ criterion }) => criterion === 'bow')!.limit;
  const counts = [counted(sites.length, 'site'), counted(cases[0].fasteners.length, 'fastener'), caseCount(cases)];
  return [
    `${paint.bold(name)}  ${paint.dim(counts.join(', '))}`,
    ...printedCases(cases).map((part) => (typeof part === 'string' ? part : caseText(part, limit, paint))),
    verdictText(result, paint),
    ...(verbose ? [workText(result, paint)] : []),
    '',
  ].join('\n\n');
}

function caseText(
  { name, sites, fasteners, seats, load, bow, strength }: CaseResult,
  limit: number,
  paint: Paint,
): string {
  const share = (value: number) => {
    const text = `${((100 * Math.abs(value)) / limit).toFixed(0)} %`;
    return Math.abs(value) > limit ? paint.red(text) : text;
  };
  return [
    `${paint.bold(`Case "${name}"`)}: ${newtons(load)} N on the sites, largest bow ${um(bow.value)} um at site ${bow.site}`,
    table(
      ['site', 'bow, um', 'of limit', 'at x, y, mm', 'flat within, um', ...contactHeadings(sites)],
      sites.map((site) => [
        ...[site.name, um(site.bow), share(site.bow), place(site.at), um(site.flatness)],
        ...contactCells(site),
      ]),
      paint,
    ),
    fastenerTable(fasteners, paint),
    ...(seats.length === 0 ? [] : [seatTable(seats, paint)]),
    ...(strength !== null ? [strengthText(strength, paint)] : []),
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
  const { criterion, unit, bound, value, limit, error, shearAdds, bracket, site, mode, case: name } = verdict;
  const amount = unit === 'mm' ? um : plain;
  const least = criterion === 'failureProbability' ? 0 : unit === 'mm' ? 5e-6 : 0.005;
  const named = { mm: ' um', N: ' N', 1: '' }[unit];
  const spread = error === null ? '' : ` +- ${error < least ? 'less than 0.01' : amount(error)}`;
  const against = bound === 'most' ? 'against' : 'against at least';
  const shear = shearAdds === null || unit !== 'mm' ? '' : `; transverse shear adds ${um(shearAdds)} um`;
  const joint =
    bracket === null
      ? ''
      : `; ${amount(bracket.sliding)}${named} with the frame sliding, ${amount(bracket.bonded)}${named} bonded`;
  const label = criterion === 'failureProbability' ? 'failure probability' : criterion;
  const stressed = criterion === 'strength' || criterion === 'failureProbability';
  const where = stressed
    ? `near ${site}`
    : criterion === 'fasteners'
      ? `at fastener ${site} (${mode})`
      : `at site ${site}`;
  return `${label} ${amount(value)}${spread}${named} ${against} ${amount(limit)}${named}, worst ${where} in case "${name}"${shear}${joint}`;
}

function workText({ mesh, dofs, cases, timings }: HeadResult, paint: Paint): string {
  const known = cases.flatMap(({ residual }) => (residual === null ? [] : [residual]));
  const residual = known.length < cases.length ? null : Math.max(...known);
  const compliances = complianceTable(cases[0].fasteners, paint);
  return [
    ...(compliances === null ? [] : [`${compliances}\n`]),
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
