import { useStore } from 'zustand';
import { dismiss } from '../state/notice-store.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { Icon } from './icons.tsx';
import styles from './notices.module.css';

/** What the user should know, until dismissed. */
export function Notices() {
  const { notices } = useWorkbench();
  const shown = useStore(notices, (state) => state.notices);
  return (
    <div className={styles.stack}>
      {shown.map(({ id, tone, title, text, action }) => (
        <div key={id} className={styles.notice} data-tone={tone} role={tone === 'trouble' ? 'alert' : 'status'}>
          <div className={styles.words}>
            <strong>{title}</strong>
            <p>{text}</p>
            {action && (
              <button
                type="button"
                className={styles.action}
                onClick={() => {
                  action.run();
                  dismiss(notices, id);
                }}
              >
                {action.label}
              </button>
            )}
          </div>
          <button type="button" className={styles.close} aria-label="Dismiss" onClick={() => dismiss(notices, id)}>
            <Icon name="cross" size={14} />
          </button>
        </div>
      ))}
    </div>
  );
}
