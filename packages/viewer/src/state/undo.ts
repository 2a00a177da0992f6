import { hasDrafts } from './draft-store.ts';
import type { Workbench } from './workbench.ts';

/** Takes back what was done last: text that never reached the model, else the last step of the model. */
export function undo({ head, history, drafts }: Pick<Workbench, 'head' | 'history' | 'drafts'>): void {
  const refused = hasDrafts(drafts.getState(), head.getState().model);
  drafts.setState({ drafts: {} });
  if (!refused) history.undo();
}
