import { type ReactNode, useId, useLayoutEffect, useRef } from 'react';
import { Icon } from './icons.tsx';
import styles from './page-dialog.module.css';

interface PageDialogProps {
  readonly title: string;
  readonly testId: string;
  /** As wide as the window allows. */
  readonly wide?: boolean;
  onClose(): void;
  readonly children: ReactNode;
}

/**
 * Something over the page that holds the focus until it is closed, by its button or by Escape; then the focus
 * returns. It begins at what is marked `data-first`, or at the button.
 */
export function PageDialog({ title, testId, wide = false, onClose, children }: PageDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  // Closed before it leaves the page, as only then the focus goes back to where it was.
  useLayoutEffect(() => {
    const element = dialog.current;
    element?.showModal();
    element?.querySelector<HTMLElement>('[data-first]')?.focus();
    return () => element?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      className={styles.dialog}
      aria-labelledby={id}
      data-testid={testId}
      data-wide={wide || undefined}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <header className={styles.head}>
        <h2 id={id} className={styles.title}>
          {title}
        </h2>
        <button type="button" className={styles.close} aria-label={`Close: ${title}`} onClick={onClose}>
          <Icon name="cross" size={15} />
        </button>
      </header>
      {children}
    </dialog>
  );
}
