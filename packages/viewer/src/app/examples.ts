import { checkHeadModel, type HeadModel } from '@flathead/solver';
import baseline from '../../../../models/kestrel-baseline.json';
import both from '../../../../models/kestrel-both.json';
import moved from '../../../../models/kestrel-moved-fasteners.json';
import ribs from '../../../../models/kestrel-ribs.json';

/** A head to start from, as shipped in models/. */
interface Example {
  readonly label: string;
  readonly note: string;
  readonly model: HeadModel;
}

export const examples: readonly Example[] = [
  { label: 'Kestrel', note: 'two rows of five sites, six fasteners far out', model: checkHeadModel(baseline) },
  { label: 'Kestrel, fasteners moved', note: 'the same, held closer to the sites', model: checkHeadModel(moved) },
  { label: 'Kestrel, ribs', note: 'the same, with the frame between the sites', model: checkHeadModel(ribs) },
  { label: 'Kestrel, both', note: 'held closer and ribbed', model: checkHeadModel(both) },
];

/** The head of the first visit. */
export const kestrel: HeadModel = examples[0].model;
