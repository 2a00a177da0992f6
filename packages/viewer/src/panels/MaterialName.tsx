import { useState } from 'react';
import { withMaterialNamed } from '../state/list-edits.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble } from './FieldTrouble.tsx';
import styles from './field.module.css';

/** Name of an own material; taken when the field is left, wherever the material is used. */
export function MaterialName({ name, index }: { name: string; index: number }) {
  const { head, history } = useWorkbench();
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = `material-name-${index}`;
  const take = (next: string): void => {
    const taken = next !== name && Object.hasOwn(head.getState().model.materials ?? {}, next);
    const wrong = next === '' ? 'Empty; expected a name.' : taken ? `Another material is called "${next}".` : null;
    setTrouble(wrong);
    if (wrong === null && next !== name) history.edit((model) => withMaterialNamed(model, name, next));
  };
  return (
    <>
      <input
        key={name}
        className={styles.text}
        autoComplete="off"
        spellCheck={false}
        maxLength={200}
        data-testid={id}
        aria-label={`Name of material ${index + 1}`}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : `${id}-trouble`}
        defaultValue={name}
        onBlur={(event) => take(event.currentTarget.value.trim())}
        onKeyDown={(event) => event.key === 'Enter' && take(event.currentTarget.value.trim())}
      />
      <FieldTrouble id={`${id}-trouble`} message={trouble} />
    </>
  );
}
