import { type FaultReport, faultReport } from '../fault/fault.ts';
import { compileHead } from '../model/compile.ts';
import { checkHeadModel } from '../model/read.ts';

/** What keeps a head from being solved as it is, such as sites outside a new outline; `null` where nothing does. */
export function headFlaw(model: unknown): FaultReport | null {
  try {
    compileHead(checkHeadModel(model));
    return null;
  } catch (thrown) {
    return faultReport(thrown);
  }
}
