import { typeset } from '../format/number.ts';
import { besideField } from '../state/propose.ts';
import { useRefusal } from '../state/use-workbench.ts';
import styles from './field.module.css';

/** What is wrong with a field, under it. */
export function FieldTrouble({ id, message }: { id: string; message: string | null }) {
  if (message === null) return null;
  return (
    <p id={id} className={styles.trouble} role="alert">
      {typeset(message)}
    </p>
  );
}

/**
 * The solver's refusal of the present model, where it is about this field.
 *
 * @param forPair the field also takes what is said of the pair or object it belongs to
 */
export function useFieldFault(path: string, forPair = false): string | null {
  const fault = useRefusal();
  const parent = path.slice(0, path.lastIndexOf('.'));
  const mine = fault !== null && (fault.path === path || (forPair && fault.path === parent));
  return mine ? besideField(fault.message, fault.path) : null;
}
