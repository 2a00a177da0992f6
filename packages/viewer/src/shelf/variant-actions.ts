import { checkHeadModel, Fault } from '@flathead/solver';
import { notify } from '../state/notice-store.ts';
import type { Workbench } from '../state/workbench.ts';
import {
  MOST_VARIANTS,
  type Variant,
  withCopy,
  withModel,
  withoutVariant,
  withReturned,
  withVariantAt,
} from '../state/workbook.ts';

export function duplicate({ head, history, notices }: Workbench, id: string): void {
  if (head.getState().book.variants.length >= MOST_VARIANTS)
    notify(notices, {
      tone: 'trouble',
      title: 'The shelf is full',
      text: `It holds ${MOST_VARIANTS} variants. Delete one, or save them and open a new workbook.`,
    });
  else history.editBook((book) => withCopy(book, id));
}

/** Takes a variant off the shelf; a notice gives it back, whatever was done since. */
export function remove({ head, history, notices }: Workbench, variant: Variant): void {
  const { id, model } = variant;
  const place = head.getState().book.variants.findIndex((other) => other.id === id);
  history.editBook((book) => withoutVariant(book, id));
  if (head.getState().book.variants.some((other) => other.id === id)) return;
  notify(notices, {
    tone: 'info',
    title: `${model.name} was deleted`,
    text: 'It is off the shelf.',
    action: { label: 'Undo', run: () => history.editBook((book) => withReturned(book, variant, place)) },
  });
}

/** Moves a variant so many places along the shelf. */
export function shift({ history }: Workbench, id: string, by: number): void {
  history.editBook((book) => {
    const place = book.variants.findIndex((variant) => variant.id === id);
    return withVariantAt(book, id, place + by);
  });
}

/** @returns what is wrong with the name; `null` when it was taken */
export function rename({ history }: Workbench, { id, model }: Variant, name: string): string | null {
  if (name === model.name) return null;
  try {
    const renamed = checkHeadModel({ ...model, name });
    history.editBook((book) => withModel(book, id, renamed));
    return null;
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown.message;
    throw thrown;
  }
}
