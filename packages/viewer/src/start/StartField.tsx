import { useId, useState } from 'react';
import { fieldText } from '../format/number.ts';
import { parseNumber } from '../format/parse-number.ts';
import { FieldTrouble } from '../panels/FieldTrouble.tsx';
import fields from '../panels/field.module.css';
import { besideField } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import type { Answers } from './use-head-draft.ts';

interface StartFieldProps {
  readonly answers: Answers;
  readonly path: string;
  readonly label: string;
  readonly unit?: string;
  /** Shown value over that of the draft. */
  readonly scale?: number;
  /** Meaning and range. */
  readonly help: string;
  /** The answer may be left out; said in the empty field. */
  readonly empty?: string;
}

/** One number of the guided start. */
export function StartField({ answers, path, label, unit = '', scale = 1, help, empty }: StartFieldProps) {
  const value = valueAt(answers.draft, path);
  const [typed, setTyped] = useState<{ readonly text: string; readonly value: unknown; readonly bad: boolean } | null>(
    null,
  );
  const ids = { field: useId(), help: useId(), trouble: useId() };
  const plain = typeof value === 'number' ? fieldText(value * scale) : '';
  const mine = typed !== null && typed.value === value ? typed : null;
  const said = answers.fault?.path === path ? besideField(answers.fault.message, path) : null;
  const trouble = mine?.bad ? noNumber(mine.text) : said;

  const take = (text: string): void => {
    const number = parseNumber(text, unit);
    const left = text.trim() === '' && empty !== undefined;
    const bad = number === null && !left;
    answers.doubt(path, bad ? `${label}: ${noNumber(text)}` : null);
    const next = bad ? value : left || number === null ? undefined : Number((number / scale).toPrecision(12));
    setTyped({ text, value: next, bad });
    if (!bad) answers.answer(path, typeof next === 'number' ? next : undefined);
  };

  return (
    <div className={fields.row} data-row>
      <label className={fields.label} htmlFor={ids.field}>
        {label}
      </label>
      <span className={fields.box} data-trouble={trouble === null ? undefined : true}>
        <input
          id={ids.field}
          className={fields.number}
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          data-testid={`start-${path}`}
          data-help={help}
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? ids.help : ids.trouble}
          placeholder={empty}
          value={mine?.text ?? plain}
          onChange={(event) => take(event.currentTarget.value)}
          onFocus={(event) => event.currentTarget.select()}
          onBlur={() => mine?.bad || setTyped(null)}
        />
        <span id={ids.help} hidden>
          {help}
        </span>
        {unit !== '' && <span className={fields.unit}>{unit}</span>}
      </span>
      <FieldTrouble id={ids.trouble} message={trouble} />
    </div>
  );
}

function noNumber(text: string): string {
  const what = text.trim() === '' ? 'nothing is given' : `"${text.trim().slice(0, 24)}" is no number`;
  return `${what}; expected one such as 7.5 or 7,5.`;
}
