import { type HeadResult, VERSION } from '@flathead/solver';

/** What stands behind the numbers: the checks, and how well this head was solved. */
export function SolutionNote({ mesh, dofs, cases }: HeadResult) {
  const residuals = cases.flatMap(({ residual }) => (residual === null ? [] : [residual]));
  return (
    <p>
      Flathead {VERSION} is held against published plates, standards and closed solutions, each with its source and its
      tolerance; the page Checks runs them on the machine at hand. This head was solved on{' '}
      {mesh.x.length.toLocaleString('en')} nodes and {mesh.region.length.toLocaleString('en')} elements with{' '}
      {dofs.toLocaleString('en')} unknowns, smallest angle {mesh.minAngle.toFixed(1)}°
      {residuals.length === cases.length &&
        `; the scaled residual of its equations is at most ${Math.max(...residuals)
          .toExponential(1)
          .replace('-', '\u2212')}`}
      . Loads and reactions balance within{' '}
      {Math.max(...cases.map(balance))
        .toExponential(0)
        .replace('-', '\u2212')}{' '}
      of the load.
    </p>
  );
}

/** Load and reactions left over, as a share of the load. */
function balance({ load, reaction, seats }: HeadResult['cases'][number]): number {
  const carried = seats.reduce((sum, { force }) => sum + force, reaction);
  return Math.abs(load + carried) / Math.max(Math.abs(load), 1e-9);
}
