import type { HeadModel } from '@flathead/solver';
import { fileName } from './file-name.ts';

/** Hands the model to the user as a JSON file named after it. */
export function saveModel(model: HeadModel): void {
  const url = URL.createObjectURL(new Blob([`${JSON.stringify(model, null, 2)}\n`], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = `${fileName(model.name)}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
