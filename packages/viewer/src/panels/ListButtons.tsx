import { Icon } from '../app/icons.tsx';
import styles from './section.module.css';

/** Under a list of the recipe. */
export function AddButton({ label, testId, onClick }: { label: string; testId: string; onClick: () => void }) {
  return (
    <button type="button" className={styles.add} data-testid={testId} onClick={onClick}>
      <Icon name="plus" size={14} /> {label}
    </button>
  );
}

/** Beside a thing of a list. */
export function RemoveButton({ name, onClick }: { name: string; onClick: () => void }) {
  return (
    <button type="button" className={styles.remove} aria-label={name} onClick={onClick}>
      <Icon name="cross" size={13} />
    </button>
  );
}
