import { useMemo } from 'react';
import { shownCase } from './shown-case.ts';
import { type ShownTension, shownTension, type TensionScale, tensionScale } from './shown-tension.ts';
import { useRun, useView } from './use-workbench.ts';

/** What the colours of the stage show, and the tension they show it of. */
export function useQuantity(): {
  readonly quantity: 'deviation' | 'tension';
  /** `null` until there is one, and while the deviation is shown. */
  readonly tension: ShownTension | null;
  readonly scale: TensionScale;
} {
  const quantity = useView((view) => view.quantity);
  const caseName = useView((view) => view.caseName);
  const solved = useRun((run) => run.solved);
  const full = useRun((run) => run.full);
  return useMemo(() => {
    if (quantity === 'deviation' || solved === null)
      return { quantity, tension: null, scale: { top: 1, limited: false } };
    const tension = shownTension({ solved, full }, shownCase(solved.result, caseName));
    return { quantity, tension, scale: tensionScale(solved.model, tension) };
  }, [quantity, caseName, solved, full]);
}
