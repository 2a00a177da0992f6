import { FieldTrouble } from '../panels/FieldTrouble.tsx';
import fields from '../panels/field.module.css';
import styles from './start.module.css';
import { type Answers, NO_NAME } from './use-head-draft.ts';

export function NameQuestion({ answers: { draft, fault, answer } }: { answers: Answers }) {
  const unnamed = fault?.path === 'name';
  return (
    <section className={styles.question} aria-label="Name">
      <div className={fields.row}>
        <label className={fields.label} htmlFor="start-name">
          Name
        </label>
        <input
          id="start-name"
          data-first
          aria-invalid={unnamed}
          aria-describedby={unnamed ? 'start-name-trouble' : undefined}
          className={fields.wide}
          maxLength={200}
          autoComplete="off"
          data-testid="start-name"
          value={draft.name}
          onChange={(event) => answer('name', event.currentTarget.value)}
        />
        <FieldTrouble id="start-name-trouble" message={unnamed ? NO_NAME : null} />
      </div>
    </section>
  );
}
