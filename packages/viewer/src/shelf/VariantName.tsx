import { useEffect, useRef, useState } from 'react';
import { useWorkbench } from '../state/use-workbench.ts';
import type { Variant } from '../state/workbook.ts';
import styles from './shelf.module.css';
import { rename } from './variant-actions.ts';

/** Field for another name: Enter takes it, Escape leaves it as it was. */
export function VariantName({ variant, onDone }: { variant: Variant; onDone: () => void }) {
  const workbench = useWorkbench();
  const [text, setText] = useState(variant.model.name);
  const [trouble, setTrouble] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.select(), []);
  const take = (): void => {
    const wrong = rename(workbench, variant, text.trim());
    setTrouble(wrong);
    if (wrong === null) onDone();
  };
  return (
    <>
      <input
        ref={field}
        className={styles.rename}
        aria-label={`New name of ${variant.model.name}`}
        aria-invalid={trouble !== null}
        title={trouble ?? undefined}
        data-testid="variant-rename"
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        onBlur={() => (text.trim() === '' ? onDone() : take())}
        onKeyDown={(event) => {
          event.stopPropagation();
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') onDone();
        }}
      />
      {trouble !== null && (
        <span className={styles.trouble} role="alert">
          {trouble}
        </span>
      )}
    </>
  );
}
