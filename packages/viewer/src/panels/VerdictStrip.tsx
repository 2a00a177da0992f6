import { type CriterionVerdict, usedShare } from '@flathead/solver';
import { useMemo, useState } from 'react';
import { CRITERION_NAMES } from '../format/criterion-text.ts';
import { micrometreDigits, typeset } from '../format/number.ts';
import { criterionStates } from '../state/criterion-states.ts';
import { useRun, useStaleness, useView, useWorkbench } from '../state/use-workbench.ts';
import { AdviceNote } from './AdviceNote.tsx';
import { CaseChips } from './CaseChips.tsx';
import { CriterionCard } from './CriterionCard.tsx';
import { OutcomeMark } from './OutcomeMark.tsx';
import { StaleNote } from './StaleNote.tsx';
import { UnjudgedCard } from './UnjudgedCard.tsx';
import { VerdictAnnouncer } from './VerdictAnnouncer.tsx';
import styles from './verdict.module.css';

/** The verdict, always in sight: word, sentence, each criterion against its limit, and the cases to look at. */
export function VerdictStrip() {
  const verdict = useRun(({ solved }) => solved?.result.verdict);
  const quality = useRun(({ solved }) => solved?.quality);
  const stale = useStaleness();
  const [open, setOpen] = useState(false);
  const { view } = useWorkbench();
  const numbers = useView((state) => state.numbers);
  const solved = useRun((run) => run.solved);
  const full = useRun((run) => run.full);
  const criteria = useMemo(() => criterionStates({ solved, full }), [solved, full]);
  const worst = worstOf(verdict?.criteria ?? []);
  const shear = worst?.unit === 'mm' ? worst.shearAdds : null;
  const remarks = verdict?.remarks ?? [];
  return (
    <section
      className={styles.strip}
      aria-label="Verdict"
      tabIndex={-1}
      data-testid="verdict"
      data-quality={quality}
      data-stale={stale ?? undefined}
    >
      <VerdictAnnouncer />
      <div className={styles.main}>
        <div className={styles.summary}>
          {verdict ? (
            <>
              <OutcomeMark
                outcome={verdict.outcome}
                soFar={criteria.some(({ state }) => state === 'kept' || state === 'awaited')}
              />
              <p className={styles.sentence}>
                {typeset(verdict.sentence)}
                {shear !== null && ` Transverse shear is ${micrometreDigits(shear)}\u00a0µm of it.`}
              </p>
              <AdviceNote />
            </>
          ) : (
            <p className={styles.sentence}>
              {stale === 'refused' ? 'This head could not be solved.' : 'Solving the head for the first time.'}
            </p>
          )}
        </div>
        <div className={styles.cards}>
          {criteria.map(({ kind, state, verdict: judged }) =>
            judged ? (
              <CriterionCard key={kind} criterion={judged} stale={state === 'kept'} />
            ) : (
              <UnjudgedCard key={kind} title={CRITERION_NAMES[kind]} awaited={state === 'awaited'} />
            ),
          )}
        </div>
      </div>
      <div className={styles.foot}>
        <CaseChips />
        {remarks.length > 0 && (
          <button type="button" className={styles.more} aria-expanded={open} onClick={() => setOpen(!open)}>
            {remarks.length} {remarks.length === 1 ? 'remark' : 'remarks'}
          </button>
        )}
        <button
          type="button"
          className={styles.more}
          aria-expanded={numbers}
          data-testid="numbers"
          onClick={() => view.setState({ numbers: !numbers })}
        >
          Numbers
        </button>
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

/** The criterion that the sentence is about: nearest to its limit, or farthest beyond. */
function worstOf(criteria: readonly CriterionVerdict[]): CriterionVerdict | undefined {
  return criteria.toSorted((a, b) => usedShare(b) - usedShare(a))[0];
}
