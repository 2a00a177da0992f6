import { siteLayout } from '@flathead/solver';
import { memo, useId, useRef, useState } from 'react';
import type { Gesture } from '../state/history.ts';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { parseSites } from '../state/touched-sites.ts';
import { useModel, useRefusal, useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble } from './FieldTrouble.tsx';
import styles from './field.module.css';
import { useDraft } from './use-draft.ts';

/** Names of sites, as in `A1 A2 B3`. What is typed stays as typed; it reaches the model when the head has them all. */
export const SiteListField = memo(function SiteListField({ path, name }: { path: string; name: string }) {
  const { head, history } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const refusal = useRefusal();
  const { draft, keep, drop } = useDraft(path);
  const [typed, setTyped] = useState<{ readonly text: string; readonly value: unknown } | null>(null);
  const gesture = useRef<Gesture | null>(null);
  const troubleId = useId();
  const fault = refusal?.path.startsWith(`${path}.`) ? refusal.message : null;
  const trouble = draft ? (draft.begun ? null : draft.message) : fault;
  const plain = Array.isArray(value) ? value.join(' ') : '';

  const take = (text: string): void => {
    const { model } = head.getState();
    const sites = siteLayout(model.sites).map((site) => site.name);
    const { names, unknown } = parseSites(text, sites);
    if (unknown !== null) {
      const message = `No site is called "${unknown.slice(0, 24)}"; the head has ${sites[0]} to ${sites[sites.length - 1]}.`;
      // The last name may still be typed.
      keep({ text, message, begun: !/[\s,;]$/.test(text) && text.trim().endsWith(unknown) });
      return;
    }
    const proposal = propose(model, path, names);
    if (!proposal.ok) {
      keep({ text, message: proposal.message, begun: false });
      return;
    }
    drop();
    setTyped({ text, value: valueAt(proposal.model, path) });
    if (names.join(' ') === plain) return;
    if (!gesture.current?.isOpen()) gesture.current = history.begin();
    gesture.current.change(() => proposal.model);
  };

  const leave = (): void => {
    gesture.current?.end();
    setTyped(null);
    if (draft?.begun) keep({ ...draft, begun: false });
  };

  return (
    <>
      <input
        className={styles.wide}
        autoComplete="off"
        spellCheck={false}
        data-testid={`field-${path}`}
        aria-label={name}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : troubleId}
        placeholder="none"
        value={draft?.text ?? (typed !== null && typed.value === value ? typed.text : plain)}
        onChange={(event) => take(event.currentTarget.value)}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Enter') leave();
          if (event.key === 'Escape') drop();
        }}
      />
      <FieldTrouble id={troubleId} message={trouble} />
    </>
  );
});
