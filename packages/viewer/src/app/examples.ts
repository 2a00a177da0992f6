import { checkHeadModel, type HeadModel } from '@flathead/solver';
import heron from '../../../../models/heron.json';
import baseline from '../../../../models/kestrel-baseline.json';
import both from '../../../../models/kestrel-both.json';
import moved from '../../../../models/kestrel-moved-fasteners.json';
import ribs from '../../../../models/kestrel-ribs.json';
import plover from '../../../../models/plover.json';
import wren from '../../../../models/wren.json';

/** A head to start from, as shipped in models/. */
interface Example {
  readonly label: string;
  readonly note: string;
  readonly model: HeadModel;
}

export const examples: readonly Example[] = [
  { label: 'Kestrel', note: 'two rows of five sites, six fasteners far out', model: checkHeadModel(baseline) },
  { label: 'Kestrel, fasteners moved in', note: 'the same, held closer to the sites', model: checkHeadModel(moved) },
  { label: 'Kestrel, ribs', note: 'the same, with the frame between the sites', model: checkHeadModel(ribs) },
  { label: 'Kestrel, both', note: 'held closer and ribbed', model: checkHeadModel(both) },
  { label: 'Wren', note: 'four sites of few but strong probes', model: checkHeadModel(wren) },
  { label: 'Heron', note: 'a row of sixteen between two connectors', model: checkHeadModel(heron) },
  { label: 'Plover', note: 'a round body with its frame let in', model: checkHeadModel(plover) },
];

/** The head of the first visit. */
export const kestrel: HeadModel = examples[0].model;
