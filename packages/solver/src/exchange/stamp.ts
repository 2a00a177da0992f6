import type { HeadModel } from '../model/head-model.ts';
import { modelHash } from '../model/model-hash.ts';
import { VERSION } from '../version.ts';

/** What every written file says of where it comes from. */
export interface Stamp {
  readonly program: string;
  readonly version: string;
  /** Name and hash of the model; the hash tells one content from another. */
  readonly model: string;
  readonly hash: string;
}

export function stampOf(model: HeadModel): Stamp {
  return { program: 'flathead', version: VERSION, model: model.name, hash: modelHash(model) };
}

/** `flathead 0.1.0, model 1a2b3c4d5e6f, Two by two`, on one line of plain ASCII. */
export function stampLine(model: HeadModel): string {
  const { program, version, hash, model: name } = stampOf(model);
  return `${program} ${version}, model ${hash}, ${name.replace(/[^\x20-\x7e]/g, '?')}`;
}
