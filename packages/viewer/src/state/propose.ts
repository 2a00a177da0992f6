import { checkHeadModel, Fault, type HeadModel } from '@flathead/solver';
import { withValue } from './set-value.ts';

export type Proposal =
  | { readonly ok: true; readonly model: HeadModel }
  | { readonly ok: false; readonly message: string };

/** The model with one value replaced, if that is right by the schema; else what is wrong in words for the field. */
export function propose(model: HeadModel, path: string, value: unknown): Proposal {
  try {
    return { ok: true, model: checkHeadModel(withValue(model, path, value)) };
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
    return { ok: false, message: besideField(thrown.message, thrown.path) };
  }
}

/** The field shows which value is meant, so the path need not be read again: `Is -3; expected 0.001 or more.` */
export function besideField(message: string, path: string): string {
  const bare = path !== '' && message.startsWith(`${path} `) ? message.slice(path.length + 1) : message;
  return bare.charAt(0).toUpperCase() + bare.slice(1);
}
