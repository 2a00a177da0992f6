import { memo, useId } from 'react';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble, useFieldFault } from './FieldTrouble.tsx';
import styles from './field.module.css';
import { useDraft } from './use-draft.ts';

/** Whole numbers apart by spaces or commas, as `2 4`; an empty field leaves the list out. Taken when it is left. */
export const WholeListField = memo(function WholeListField(props: { path: string; name: string; help: string }) {
  const { path, name, help } = props;
  const { head, history } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const fault = useFieldFault(path);
  const { draft, keep, drop } = useDraft(path);
  const ids = { help: useId(), trouble: useId() };
  const trouble = draft?.message ?? fault;
  const shown = draft?.text ?? (Array.isArray(value) ? value.join(' ') : '');

  const take = (text: string): void => {
    const parts = text.split(/[\s,;]+/).filter((part) => part !== '');
    const numbers = parts.map(Number);
    const wrong = parts.find((part) => !/^\d+$/.test(part));
    if (wrong !== undefined) {
      keep({ text, message: `"${wrong.slice(0, 24)}" is no whole number; expected some such as 2 4.`, begun: false });
      return;
    }
    const proposal = propose(head.getState().model, path, numbers.length > 0 ? numbers : undefined);
    if (!proposal.ok) {
      keep({ text, message: proposal.message, begun: false });
      return;
    }
    drop();
    history.edit(() => proposal.model);
  };

  return (
    <>
      <input
        key={shown}
        className={styles.wide}
        autoComplete="off"
        spellCheck={false}
        data-testid={`field-${path}`}
        data-help={help}
        aria-label={name}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? ids.help : ids.trouble}
        placeholder="none"
        defaultValue={shown}
        onBlur={(event) => event.currentTarget.value !== shown && take(event.currentTarget.value)}
        onKeyDown={(event) => event.key === 'Enter' && take(event.currentTarget.value)}
      />
      <span id={ids.help} hidden>
        {help}
      </span>
      <FieldTrouble id={ids.trouble} message={trouble} />
    </>
  );
});
