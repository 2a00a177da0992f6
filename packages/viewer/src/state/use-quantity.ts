import { useMemo } from 'react';
import { type ColourScale, limitScale, plainScale } from '../buffers/colour-scale.ts';
import { largestBow } from './largest-bow.ts';
import { shownCase } from './shown-case.ts';
import { type ShownContact, shownContact } from './shown-contact.ts';
import { type ShownTension, shownTension, tensionScale } from './shown-tension.ts';
import { usePointer, useRun, useView } from './use-workbench.ts';
import type { Quantity } from './view-store.ts';

interface ShownQuantity {
  readonly quantity: Quantity;
  /** `null` until there is one, and while something else is shown. */
  readonly tension: ShownTension | null;
  /** `null` where the model does not give what it takes, and while something else is shown. */
  readonly contact: ShownContact | null;
  /** What the colours mean: um of the bow in mm, MPa, or N. */
  readonly scale: ColourScale;
}

/** What the colours of the stage show, and what they show it of. */
export function useQuantity(): ShownQuantity {
  const quantity = useView((view) => view.quantity);
  const caseName = useView((view) => view.caseName);
  const solved = useRun((run) => run.solved);
  const full = useRun((run) => run.full);
  const dragged = usePointer((pointer) => pointer.dragged !== null);
  return useMemo((): ShownQuantity => {
    const none = { quantity, tension: null, contact: null, scale: plainScale(1) };
    if (solved === null) return none;
    const shown = shownCase(solved.result, caseName);
    if (quantity === 'contact') {
      const contact = shownContact(solved, shown);
      if (contact === null) return none;
      const { allowed, preload, lost } = contact;
      const most = lost.reduce((largest, value) => Math.max(largest, value), 0);
      const scale = allowed === null ? { ...plainScale(preload), largest: most } : limitScale(allowed, most);
      return { ...none, contact, scale };
    }
    if (quantity === 'tension') {
      const tension = shownTension({ solved, full }, shown);
      return { ...none, tension, scale: tensionScale(solved.model, tension) };
    }
    // A drag keeps the scale that it began with, or one that holds more, so that less is never darker while it lasts.
    const most = largestBow(solved.result);
    const held = dragged && full !== null ? Math.max(most, largestBow(full.result)) : most;
    return { ...none, scale: { ...limitScale(solved.model.limits.bow, held), largest: most } };
  }, [quantity, caseName, solved, full, dragged]);
}
