import { useMemo } from 'react';
import { shownCase } from './shown-case.ts';
import { type ShownContact, shownContact } from './shown-contact.ts';
import { type ShownTension, shownTension, type TensionScale, tensionScale } from './shown-tension.ts';
import { useRun, useView } from './use-workbench.ts';
import type { Quantity } from './view-store.ts';

/** What the colours of the stage show, and what they show it of. */
export function useQuantity(): {
  readonly quantity: Quantity;
  /** `null` until there is one, and while something else is shown. */
  readonly tension: ShownTension | null;
  readonly scale: TensionScale;
  /** `null` where the model does not give what it takes, and while something else is shown. */
  readonly contact: ShownContact | null;
} {
  const quantity = useView((view) => view.quantity);
  const caseName = useView((view) => view.caseName);
  const solved = useRun((run) => run.solved);
  const full = useRun((run) => run.full);
  return useMemo(() => {
    const none = { quantity, tension: null, scale: { top: 1, limited: false }, contact: null };
    if (quantity === 'deviation' || solved === null) return none;
    const shown = shownCase(solved.result, caseName);
    if (quantity === 'contact') return { ...none, contact: shownContact(solved, shown) };
    const tension = shownTension({ solved, full }, shown);
    return { ...none, tension, scale: tensionScale(solved.model, tension) };
  }, [quantity, caseName, solved, full]);
}
