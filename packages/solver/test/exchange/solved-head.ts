import { modelHash } from '../../src/model/model-hash.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { solveHead } from '../../src/solve-head.ts';
import { altered, twoByTwo } from '../model/two-by-two.ts';

/** A head of two cases, with names that a careless writer lets a spreadsheet run. */
export const model = checkHeadModel(
  altered(twoByTwo, {
    name: '=HYPERLINK("x") & <two>',
    'fasteners.0.name': '+F1',
    cases: [{ name: 'mounted' }, { name: 'left', touched: ['A1', 'B1'] }],
  }),
);
export const { result } = solveHead(model);
export const hash = modelHash(model);
