import { useState } from 'react';
import { typeset } from '../format/number.ts';
import { useRun, useStaleness } from '../state/use-workbench.ts';
import { CaseChips } from './CaseChips.tsx';
import { CriterionCard } from './CriterionCard.tsx';
import { OutcomeMark } from './OutcomeMark.tsx';
import { StaleNote } from './StaleNote.tsx';
import styles from './verdict.module.css';

/** The verdict, always in sight: word, sentence, each criterion against its limit, and the cases to look at. */
export function VerdictStrip() {
  const verdict = useRun(({ solved }) => solved?.result.verdict);
  const quality = useRun(({ solved }) => solved?.quality);
  const stale = useStaleness();
  const [open, setOpen] = useState(false);
  const remarks = verdict?.remarks ?? [];
  return (
    <section
      className={styles.strip}
      aria-label="Verdict"
      data-testid="verdict"
      data-quality={quality}
      data-stale={stale ?? undefined}
    >
      <div className={styles.main}>
        <div className={styles.summary} role="status">
          {verdict ? (
            <>
              <OutcomeMark outcome={verdict.outcome} />
              <p className={styles.sentence}>{typeset(verdict.sentence)}</p>
            </>
          ) : (
            <p className={styles.sentence}>
              {stale === 'refused' ? 'This head could not be solved.' : 'Solving the head for the first time.'}
            </p>
          )}
        </div>
        {verdict?.criteria.map((criterion) => (
          <CriterionCard key={criterion.criterion} criterion={criterion} />
        ))}
      </div>
      <div className={styles.foot}>
        <CaseChips />
        {remarks.length > 0 && (
          <button type="button" className={styles.more} aria-expanded={open} onClick={() => setOpen(!open)}>
            {remarks.length} {remarks.length === 1 ? 'remark' : 'remarks'}
          </button>
        )}
        <StaleNote />
      </div>
      {open && remarks.length > 0 && (
        <ul className={styles.remarks}>
          {remarks.map((remark) => (
            <li key={remark}>{typeset(remark)}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
