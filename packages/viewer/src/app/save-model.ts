import type { HeadModel } from '@flathead/solver';

/** Hands the model to the user as a JSON file named after it. */
export function saveModel(model: HeadModel): void {
  const url = URL.createObjectURL(new Blob([`${JSON.stringify(model, null, 2)}\n`], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = `${fileName(model.name)}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

function fileName(name: string): string {
  const bare = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return bare === '' ? 'head' : bare;
}
