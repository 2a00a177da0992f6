import { memo, useId, useRef } from 'react';
import type { Gesture } from '../state/history.ts';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble, useFieldFault } from './FieldTrouble.tsx';
import styles from './field.module.css';
import { useDraft } from './use-draft.ts';

interface TextFieldProps {
  readonly path: string;
  readonly name: string;
  readonly className?: string | undefined;
  /** The model may leave it out, as it does when the field is empty. */
  readonly optional?: boolean;
  /** More than one makes it a field of several lines. */
  readonly lines?: number;
}

/** A name in the model. */
export const TextField = memo(function TextField(props: TextFieldProps) {
  const { path, name, className = styles.text, optional = false, lines = 1 } = props;
  const { head, history } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const fault = useFieldFault(path);
  const { draft, keep, drop } = useDraft(path);
  const gesture = useRef<Gesture | null>(null);
  const troubleId = useId();
  const trouble = draft?.message ?? fault;

  const take = (text: string): void => {
    const proposal = propose(head.getState().model, path, optional && text === '' ? undefined : text);
    if (!proposal.ok) {
      keep({ text, message: proposal.message, begun: false });
      return;
    }
    drop();
    if (!gesture.current?.isOpen()) gesture.current = history.begin();
    gesture.current.change(() => proposal.model);
  };

  const Field = lines > 1 ? 'textarea' : 'input';
  return (
    <>
      <Field
        className={className}
        autoComplete="off"
        spellCheck={false}
        data-testid={`field-${path}`}
        aria-label={name}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : troubleId}
        value={draft?.text ?? (typeof value === 'string' ? value : '')}
        onChange={(event) => take(event.currentTarget.value)}
        rows={lines > 1 ? lines : undefined}
        onBlur={() => gesture.current?.end()}
      />
      <FieldTrouble id={troubleId} message={trouble} />
    </>
  );
});
