import { fieldName } from '../format/field-help.ts';
import { typeset } from '../format/number.ts';
import { useFirstDraft, useModel, useRefusal, useRun, useStaleness, useWorkbench } from '../state/use-workbench.ts';
import styles from './verdict.module.css';

/** Says when the answer shown is not that of the head shown, and why. */
export function StaleNote() {
  const { runner } = useWorkbench();
  const stale = useStaleness();
  const refusal = useRefusal();
  const kept = useRun(({ solved }) => solved !== null);
  const lead = kept ? 'Last good answer shown.' : 'No answer.';
  const live = useRun(({ solved }) => solved?.quality === 'live');
  const stress = useModel(({ limits }) => (limits.strengthFactor ?? limits.failureProbability) !== undefined);
  const draft = useFirstDraft();
  if (stale === 'refused')
    return (
      <p className={styles.note} data-tone="fail" role="alert">
        <strong>{lead}</strong> {typeset(refusal?.message ?? '')}
      </p>
    );
  if (stale === 'draft')
    return (
      <p className={styles.note} data-tone="fail">
        <strong>{lead}</strong> {fieldName(draft ?? '')}: no usable value yet.
      </p>
    );
  if (stale === 'solving')
    return (
      <p className={styles.note} data-tone="late">
        <span className={styles.pulse} aria-hidden="true" /> Solving the last edit
        <button type="button" className={styles.stop} onClick={() => runner.stop()}>
          Stop
        </button>
      </p>
    );
  return live ? (
    <p className={styles.note} data-tone="late">
      <span className={styles.pulse} aria-hidden="true" />{' '}
      {stress ? 'Estimating the error; stress is judged with it' : 'Estimating the error'}
    </p>
  ) : null;
}
