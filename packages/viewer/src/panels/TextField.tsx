import { useEffect, useId, useRef, useState } from 'react';
import { refuseDraft, settleDraft } from '../state/draft-store.ts';
import type { Gesture } from '../state/history.ts';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble, useFieldFault } from './FieldTrouble.tsx';
import styles from './field.module.css';

/** A name in the model. */
export function TextField({ path, name, className = styles.text }: { path: string; name: string; className?: string }) {
  const { head, history, drafts } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const [draft, setDraft] = useState<{ text: string; over: unknown; trouble: string } | null>(null);
  const gesture = useRef<Gesture | null>(null);
  const troubleId = useId();
  const fault = useFieldFault(path);
  useEffect(() => () => settleDraft(drafts, path), [drafts, path]);
  const live = draft !== null && draft.over === value ? draft : null;
  const trouble = live?.trouble ?? fault;

  const take = (text: string): void => {
    const proposal = propose(head.getState().model, path, text);
    if (!proposal.ok) {
      refuseDraft(drafts, path, proposal.message);
      setDraft({ text, over: value, trouble: proposal.message });
      return;
    }
    settleDraft(drafts, path);
    setDraft(null);
    if (!gesture.current?.isOpen()) gesture.current = history.begin();
    gesture.current.change(() => proposal.model);
  };

  return (
    <>
      <input
        className={className}
        autoComplete="off"
        spellCheck={false}
        data-testid={`field-${path}`}
        aria-label={name}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : troubleId}
        value={live?.text ?? (typeof value === 'string' ? value : '')}
        onChange={(event) => take(event.currentTarget.value)}
        onBlur={() => gesture.current?.end()}
      />
      <FieldTrouble id={troubleId} message={trouble} />
    </>
  );
}
