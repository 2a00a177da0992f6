import { memo, useId } from 'react';
import { formatCorners, parseCorners } from '../format/corners.ts';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useRefusal, useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble } from './FieldTrouble.tsx';
import styles from './field.module.css';
import { useDraft } from './use-draft.ts';

const HELP = 'Corners in order, one to a line: x and y in mm. Paste them from a table. At least three.';

/** Corners of a polygon as text, a line for each. It reaches the model when the field is left and holds
 * a polygon; else it stays as typed. */
export const CornersField = memo(function CornersField({ path, name }: { path: string; name: string }) {
  const { head, history } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const refusal = useRefusal();
  const { draft, keep, drop } = useDraft(path);
  const ids = { help: useId(), trouble: useId() };
  const owner = path.slice(0, path.lastIndexOf('.'));
  const fault = refusal && (refusal.path === owner || refusal.path.startsWith(path)) ? refusal.message : null;
  const trouble = draft?.message ?? fault;

  const take = (text: string): void => {
    const { corners, wrong } = parseCorners(text);
    const proposal = wrong === null ? propose(head.getState().model, path, corners) : null;
    if (proposal === null || !proposal.ok) {
      keep({ text, message: wrong ?? (proposal?.ok === false ? proposal.message : ''), begun: false });
      return;
    }
    drop();
    history.edit(() => proposal.model);
  };

  return (
    <>
      <textarea
        className={styles.corners}
        rows={4}
        spellCheck={false}
        data-testid={`field-${path}`}
        data-help={HELP}
        aria-label={`Corners of ${name}, mm`}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? ids.help : ids.trouble}
        // Mounted anew for another polygon; typed freely in between.
        key={draft ? 'draft' : formatCorners(value)}
        defaultValue={draft?.text ?? formatCorners(value)}
        onBlur={(event) => {
          if (event.currentTarget.value !== (draft?.text ?? formatCorners(value))) take(event.currentTarget.value);
        }}
      />
      <span id={ids.help} hidden>
        {HELP}
      </span>
      <FieldTrouble id={ids.trouble} message={trouble} />
    </>
  );
});
