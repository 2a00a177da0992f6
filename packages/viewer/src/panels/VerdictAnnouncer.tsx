import { VisuallyHidden } from '@mantine/core';
import { announcement } from '../state/announcement.ts';
import { useLast } from '../state/use-last.ts';
import { useModel, usePointer, useRun } from '../state/use-workbench.ts';

/** Reads the verdict out once it stands: politely, and not while something is dragged or still being solved. */
export function VerdictAnnouncer() {
  const model = useModel((model) => model);
  const solved = useRun((run) => run.solved);
  const refusal = useRun((run) => run.refusal);
  const held = usePointer(({ dragged }) => dragged !== null);
  const said = useLast(held ? null : announcement({ solved, refusal }, model));
  return (
    <VisuallyHidden role="status" aria-live="polite" data-testid="announcement">
      {said}
    </VisuallyHidden>
  );
}
