import { useEffect, useId, useRef, useState } from 'react';
import { fieldText } from '../format/number.ts';
import { parseNumber } from '../format/parse-number.ts';
import { refuseDraft, settleDraft } from '../state/draft-store.ts';
import type { Gesture } from '../state/history.ts';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble, useFieldFault } from './FieldTrouble.tsx';
import styles from './field.module.css';

interface NumberFieldProps {
  /** Where the value is in the model. */
  readonly path: string;
  /** Name for those who do not see where the field stands: `Frame thickness`. */
  readonly name: string;
  readonly unit?: string;
  /** Shown value over that of the model: 1000 for a deflection in um. */
  readonly scale?: number;
  /** What an arrow key adds, as shown. */
  readonly step?: number;
  /** Said in an empty field, which then leaves the value out of the model. */
  readonly empty?: string;
  /** Takes the faults of the pair that the value belongs to. */
  readonly forPair?: boolean;
}

/** Text being typed, over the value of the model it was typed on. */
interface Draft {
  readonly text: string;
  readonly over: unknown;
  readonly trouble: string | null;
  /** A number just begun: said to be none only when the field is left. */
  readonly begun?: boolean;
}

const BEGUN = /^\s*[+\-\u2212]?[.,]?$/;

/** A number of the model. What is typed stays as typed; it reaches the model when it is right by the schema. */
export function NumberField({ path, name, unit = '', scale = 1, step = 1, empty, forPair = false }: NumberFieldProps) {
  const { head, history, drafts } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const [draft, setDraft] = useState<Draft | null>(null);
  const gesture = useRef<Gesture | null>(null);
  const troubleId = useId();
  const fault = useFieldFault(path, forPair);
  useEffect(() => () => settleDraft(drafts, path), [drafts, path]);

  // Undo, a drag or an opened file changed the value under the draft: the model is right.
  const live = draft !== null && draft.over === value ? draft : null;
  const shown = typeof value === 'number' ? fieldText(value * scale) : '';
  const trouble = live?.begun ? null : (live?.trouble ?? fault);

  const take = (text: string): void => {
    const number = parseNumber(text, unit);
    const blank = text.trim() === '' && empty !== undefined;
    const refuse = (message: string): void => {
      refuseDraft(drafts, path, message);
      setDraft({ text, over: value, trouble: message, begun: BEGUN.test(text) });
    };
    if (number === null && !blank) {
      const what = text.trim() === '' ? 'Empty' : `"${text.trim().slice(0, 24)}" is no number`;
      refuse(`${what}; expected a number such as 7.5 or 7,5.`);
      return;
    }
    const next = number === null ? undefined : Number((number / scale).toPrecision(12));
    const proposal = propose(head.getState().model, path, next);
    if (!proposal.ok) {
      refuse(scale === 1000 ? `${proposal.message} (Limits in mm.)` : proposal.message);
      return;
    }
    settleDraft(drafts, path);
    setDraft({ text, over: next, trouble: null });
    if (next === value) return;
    if (!gesture.current?.isOpen()) gesture.current = history.begin();
    gesture.current.change(() => proposal.model);
  };

  const leave = (): void => {
    gesture.current?.end();
    gesture.current = null;
    if (live) setDraft(live.trouble === null ? null : { ...live, begun: false });
  };

  return (
    <>
      <span className={styles.box} data-trouble={trouble === null ? undefined : true}>
        <input
          className={styles.number}
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          data-testid={`field-${path}`}
          aria-label={unit === '' ? name : `${name}, ${unit}`}
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? undefined : troubleId}
          placeholder={empty}
          value={live?.text ?? shown}
          onChange={(event) => take(event.currentTarget.value)}
          onFocus={(event) => event.currentTarget.select()}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key === 'Enter') leave();
            if (event.key === 'Escape') {
              settleDraft(drafts, path);
              setDraft(null);
            }
            const up = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
            if (up === 0 || typeof value !== 'number') return;
            event.preventDefault();
            take(fieldText(value * scale + up * (event.shiftKey ? step / 10 : step)));
          }}
        />
        {unit !== '' && (live?.text ?? shown) !== '' && (
          <span className={styles.unit} aria-hidden="true">
            {unit}
          </span>
        )}
      </span>
      <FieldTrouble id={troubleId} message={trouble} />
    </>
  );
}
