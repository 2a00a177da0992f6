import type { PlateProblem, PlateResult } from '@flathead/solver';
import { newtons, place, plain } from './format.ts';
import { counted, residualText, timingText } from './head-report.ts';
import { table } from './table.ts';
import type { Paint } from './terminal.ts';

/** What `flathead plate` prints: extremes, values at the points asked for, reactions, and how it was solved. */
export function plateText(problem: PlateProblem, result: PlateResult, paint: Paint, verbose: boolean): string {
  const { w, error, load, flatness, bestFitPlane } = result;
  const percent = (100 * error.estimate).toPrecision(2);
  const parts = [
    paint.bold(problem.name ?? 'Plate'),
    [
      `w max  ${plain(w.max.value)} mm at ${place(w.max.at)}`,
      `w min  ${plain(w.min.value)} mm at ${place(w.min.at)}`,
      `error  about ${plain(error.max)} mm, ${percent} % of the largest deflection`,
      `load   ${newtons(load)} N along +z`,
    ].join('\n'),
    ...pointTable(problem, result, paint),
    ...supportTable(problem, result, paint),
  ];
  if (flatness !== null && bestFitPlane !== null && error.flatness !== null)
    parts.push(
      [
        `Flatness of the reported area: minimum zone ${plain(flatness.minimumZone)} mm (error about ${plain(error.flatness)} mm), least squares ${plain(flatness.leastSquares.total)} mm`,
        `Best-fit plane w = ${plain(bestFitPlane.a)} + ${plain(bestFitPlane.bx)} x + ${plain(bestFitPlane.by)} y`,
      ].join('\n'),
    );
  if (verbose) parts.push(workText(result, paint));
  return `${parts.join('\n\n')}\n`;
}

function pointTable({ report }: PlateProblem, { w, moments, error }: PlateResult, paint: Paint): string[] {
  const points = report?.at ?? [];
  if (points.length === 0) return [];
  const rows = points.map((at, i) => {
    const { mxx, myy, mxy } = moments.at[i];
    return [`${i + 1}`, place(at), ...[w.at[i], error.at[i], mxx, myy, mxy].map(plain)];
  });
  return [table(['point', 'x, y, mm', 'w, mm', '+-, mm', 'mxx, N', 'myy, N', 'mxy, N'], rows, paint)];
}

function supportTable({ supports = [] }: PlateProblem, { reactions, error }: PlateResult, paint: Paint): string[] {
  if (supports.length === 0) return [];
  const rows = supports.map(({ name, at }, i) => [
    name ?? `${i + 1}`,
    place(at),
    newtons(reactions[i]),
    plain(error.reactions[i]),
  ]);
  return [table(['support', 'x, y, mm', 'reaction, N', '+-, N'], rows, paint)];
}

function workText({ mesh, dofs, residual, timings }: PlateResult, paint: Paint): string {
  const size = `${counted(mesh.nodes, 'node')}, ${counted(mesh.elements, 'element')}, ${dofs} unknowns`;
  return [
    `${size}, smallest angle ${mesh.minAngle.toFixed(1)} deg, ${residualText(residual)}`,
    timingText(timings, paint),
  ].join('\n');
}
