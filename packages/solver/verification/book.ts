import type { Topic } from './check.ts';
import { ceramicStrength } from './topics/ceramic.ts';
import { clampedPlates } from './topics/clamped.ts';
import { compositeSections } from './topics/composite.ts';
import { drilledFields } from './topics/drilled.ts';
import { flatnessSets } from './topics/flatness.ts';
import { foundations } from './topics/foundations.ts';
import { freeEdges } from './topics/free-edges.ts';
import { heads } from './topics/heads.ts';
import { heatedPlates } from './topics/heated.ts';
import { pointSupports } from './topics/points.ts';
import { roundPlates } from './topics/round.ts';
import { screwJoints } from './topics/screws.ts';
import { simplySupported } from './topics/simply-supported.ts';
import { skewPlates } from './topics/skew.ts';
import { flatSlabs } from './topics/slabs.ts';
import { standardRectangles } from './topics/standard-rectangles.ts';
import { supports } from './topics/supports.ts';
import { thickPlates } from './topics/thick.ts';

/** Every case that the solver is held against, by topic. */
export const verificationBook: readonly Topic[] = [
  simplySupported,
  freeEdges,
  clampedPlates,
  standardRectangles,
  skewPlates,
  roundPlates,
  pointSupports,
  flatSlabs,
  foundations,
  thickPlates,
  compositeSections,
  heatedPlates,
  supports,
  flatnessSets,
  drilledFields,
  ceramicStrength,
  screwJoints,
  heads,
];
