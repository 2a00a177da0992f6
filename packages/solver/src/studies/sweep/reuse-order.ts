import { Fault } from '../../fault/fault.ts';
import { compileHead } from '../../model/compile.ts';
import type { HeadModel } from '../../model/head-model.ts';

/** How far back a solve goes when one thing changes: 2 a new mesh, 1 a new factor, 0 supports, loads or limits. */
export type Depth = 0 | 1 | 2;

/** How far a step between two variants goes back; one that can't be built goes all the way. */
export function depthOfChange(one: () => HeadModel, other: () => HeadModel): Depth {
  try {
    const [a, b] = [keysOf(one()), keysOf(other())];
    return a.mesh !== b.mesh ? 2 : a.sections !== b.sections ? 1 : 0;
  } catch (thrown) {
    if (thrown instanceof Fault) return 2;
    throw thrown;
  }
}

function keysOf(model: HeadModel) {
  const { problems, siteArea } = compileHead(model);
  const [{ outline, openings, regions = [], supports = [], mesh }] = problems;
  return {
    mesh: JSON.stringify([
      outline,
      openings,
      regions.map(({ shape }) => shape),
      supports.map(({ at, diameter, over }) => [at, diameter, over]),
      mesh,
      siteArea,
    ]),
    sections: JSON.stringify(
      problems.map(({ section, regions = [], foundations }) => [
        section,
        regions.map((region) => region.section),
        foundations,
      ]),
    ),
  };
}
