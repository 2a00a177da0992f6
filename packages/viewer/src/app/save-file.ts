import type { HeadModel } from '@flathead/solver';
import { workbookText } from '../keeping/workbook-file.ts';
import { benchModel, type Workbook } from '../state/workbook.ts';
import { fileName } from './file-name.ts';
import { keepRecent } from './open-content.ts';

/** Hands the model to the user as a JSON file named after it. */
export function saveModel(model: HeadModel): void {
  const name = `${fileName(model.name)}.json`;
  saveText(name, `${JSON.stringify(model, null, 2)}\n`);
  keepRecent(name, { kind: 'head', model });
}

/** Hands all variants to the user as one JSON file named after the one on the bench. */
export function saveWorkbook(book: Workbook): void {
  const name = `${fileName(benchModel(book).name)}.workbook.json`;
  saveText(name, `${workbookText(book, 2)}\n`);
  keepRecent(name, { kind: 'workbook', book });
}

/** Hands a text or bytes to the user as a file. */
export function saveText(name: string, content: string | Uint8Array, type = 'application/json'): void {
  const url = URL.createObjectURL(new Blob([typeof content === 'string' ? content : content.slice()], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
