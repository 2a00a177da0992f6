import type { HeadModel } from '@flathead/solver';
import { memo, useId, useMemo, useRef, useState } from 'react';
import { fieldHelp } from '../format/field-help.ts';
import { exponentText, fieldText } from '../format/number.ts';
import { parseNumber } from '../format/parse-number.ts';
import type { Gesture } from '../state/history.ts';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { FieldTrouble, useFieldFault } from './FieldTrouble.tsx';
import styles from './field.module.css';
import { useDraft } from './use-draft.ts';

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
  /** Shown by powers of ten, such as 1e-6; an arrow key multiplies by ten. */
  readonly byPowers?: boolean;
  /** Takes the faults of the pair that the value belongs to. */
  readonly forPair?: boolean;
  /** Of a pair that the model may leave out, which then stands for two zeros. */
  readonly pair?: boolean;
}

const BEGUN = /^\s*[+\-\u2212]?[.,]?$/;

/** A number of the model. What is typed stays as typed; it reaches the model when it is right by the schema. */
export const NumberField = memo(function NumberField(props: NumberFieldProps) {
  const { path, name, unit = '', scale = 1, step = 1, empty, byPowers = false, forPair = false, pair = false } = props;
  const { head, history } = useWorkbench();
  const value = useModel((model) => valueAt(model, path));
  const fault = useFieldFault(path, forPair);
  const { draft, keep, drop } = useDraft(path);
  /** Text of the present value as it was typed, such as `7,50`, until the field is left. */
  const [typed, setTyped] = useState<{ readonly text: string; readonly value: unknown } | null>(null);
  const gesture = useRef<Gesture | null>(null);
  const troubleId = useId();
  const helpId = useId();
  const help = useMemo(() => fieldHelp(path, unit, scale), [path, unit, scale]);

  const shown = byPowers ? exponentText : fieldText;
  const plain = typeof value === 'number' ? shown(value * scale) : '';
  const text = draft?.text ?? (typed !== null && typed.value === value ? typed.text : plain);
  const standard = empty !== undefined && Number.isFinite(Number(empty));
  const trouble = draft ? (draft.begun ? null : draft.message) : fault;

  const take = (next: string): void => {
    const bare = next.trim();
    const number = parseNumber(next, unit);
    const left = bare === '' && empty !== undefined;
    if (number === null && !left) {
      const what = bare === '' ? 'Empty' : `"${bare.slice(0, 24)}" is no number`;
      keep({
        text: next,
        message: `${what}; expected a number such as 7.5 or 7,5${unit === '' ? '' : `, in ${unit} or with its unit`}.`,
        begun: BEGUN.test(next),
      });
      return;
    }
    const wanted = number === null ? undefined : Number((number / scale).toPrecision(12));
    const { model } = head.getState();
    const proposal = pair ? propose(model, ...ofPair(model, path, wanted ?? 0)) : propose(model, path, wanted);
    if (!proposal.ok) {
      const message = scale === 1000 ? `${proposal.message} (Limits in mm.)` : proposal.message;
      keep({ text: next, message, begun: false });
      return;
    }
    drop();
    setTyped({ text: next, value: valueAt(proposal.model, path) });
    if (proposal.model === model || (!pair && wanted === value)) return;
    if (!gesture.current?.isOpen()) gesture.current = history.begin();
    gesture.current.change(() => proposal.model);
  };

  const leave = (): void => {
    gesture.current?.end();
    gesture.current = null;
    setTyped(null);
    if (draft?.begun) keep({ ...draft, begun: false });
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
          aria-describedby={trouble === null ? helpId : troubleId}
          data-help={help}
          placeholder={empty}
          data-standard={standard || undefined}
          value={text}
          onChange={(event) => take(event.currentTarget.value)}
          onFocus={(event) => event.currentTarget.select()}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key === 'Enter') leave();
            if (event.key === 'Escape') drop();
            const up = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
            if (up === 0 || typeof value !== 'number') return;
            event.preventDefault();
            if (byPowers) take(exponentText(value * scale * 10 ** up));
            else take(fieldText(value * scale + up * (event.shiftKey ? step / 10 : step)));
          }}
        />
        <span id={helpId} hidden>
          {help}
        </span>
        {unit !== '' && (text !== '' || standard) && (
          <span className={styles.unit} aria-hidden="true">
            {unit}
          </span>
        )}
      </span>
      <FieldTrouble id={troubleId} message={trouble} />
    </>
  );
});

/** Path and value of the pair with one of its numbers replaced; a pair of zeros is left out. */
function ofPair(model: HeadModel, path: string, value: number): readonly [string, unknown] {
  const parent = path.slice(0, path.lastIndexOf('.'));
  const whole = valueAt(model, parent);
  const [x, y] = Array.isArray(whole) ? whole : [0, 0];
  const next = path.endsWith('.0') ? [value, y] : [x, value];
  return [parent, next.every((number) => number === 0) ? undefined : next];
}
