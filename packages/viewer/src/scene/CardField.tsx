import { useId, useLayoutEffect, useRef, useState } from 'react';
import { fieldText } from '../format/number.ts';
import { parseNumber } from '../format/parse-number.ts';
import { parsePlace } from '../format/parse-place.ts';
import styles from './card.module.css';

interface CardFieldProps {
  readonly label: string;
  /** Name for those who do not see the card. */
  readonly name: string;
  readonly testId: string;
  /** One number, or the two of a place or size, as shown. */
  readonly values: readonly number[];
  /** Takes what was typed. @returns what is wrong with it, or worth saying; `null` = nothing */
  readonly take: (values: readonly number[]) => string | null;
  /** Text to begin with, typed on the grip; empty = that of the values, chosen; `null` = none. Give it a key of its own. */
  readonly typed?: string | null;
  /** Where the focus goes with Escape or when done. */
  readonly leave?: () => void;
}

/** Numbers beside a thing on the stage, decimals with comma or point. */
export function CardField(props: CardFieldProps) {
  const { label, name, testId, values, take, typed = null, leave } = props;
  const [text, setText] = useState(typed === '' ? null : typed);
  const [word, setWord] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const wordId = useId();
  const shown = values.map(fieldText).join(', ');

  // At once, so that the next key lands in the field.
  useLayoutEffect(() => {
    const field = input.current;
    if (typed === null || field === null) return;
    field.focus();
    field.setSelectionRange(typed === '' ? 0 : field.value.length, field.value.length);
  }, [typed]);

  /** Whether the text became a value. */
  const enter = (): boolean => {
    if (text === null) return true;
    const one = values.length === 1 ? parseNumber(text, 'mm') : null;
    const read = values.length === 1 ? (one === null ? null : [one]) : parsePlace(text);
    if (read === null) {
      setWord(values.length === 1 ? 'Expected a number such as 7.5 or 7,5.' : 'Expected two numbers such as 12.5 -3.');
      return false;
    }
    const said = take(read);
    setWord(said);
    setText(null);
    return said === null;
  };

  return (
    <label className={styles.field}>
      <span className={styles.label}>{label}</span>
      <input
        ref={input}
        className={styles.input}
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        data-testid={testId}
        aria-label={`${name}, mm`}
        aria-invalid={word !== null && text !== null}
        aria-describedby={word === null ? undefined : wordId}
        value={text ?? shown}
        onChange={(event) => {
          setText(event.currentTarget.value);
          setWord(null);
        }}
        onBlur={() => text !== null && !enter() && setText(null)}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && enter()) leave?.();
          if (event.key !== 'Escape') return;
          setText(null);
          setWord(null);
          leave?.();
        }}
      />
      <span className={styles.unit} aria-hidden="true">
        mm
      </span>
      {word !== null && (
        <span id={wordId} className={styles.word} role="alert">
          {word}
        </span>
      )}
    </label>
  );
}
