import { useEffect } from 'react';
import { useStore } from 'zustand';
import { dismiss } from '../state/notice-store.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import { Icon } from './icons.tsx';
import styles from './notices.module.css';

/** How long a brief notice stays, ms. */
const BRIEF = 9000;

/** What the user should know, until dismissed. @param brief those of the stage, over it; else all others, over the page */
export function Notices({ brief = false }: { brief?: boolean }) {
  const { notices } = useWorkbench();
  const all = useStore(notices, (state) => state.notices);
  const shown = all.filter((notice) => (notice.brief ?? false) === brief);
  const last = shown.at(-1)?.id;
  useEffect(() => {
    if (!brief || last === undefined) return;
    const timer = setTimeout(() => dismiss(notices, last), BRIEF);
    return () => clearTimeout(timer);
  }, [brief, last, notices]);
  return (
    <div className={brief ? styles.brief : styles.stack}>
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
