import { fieldText, marginDigits, micrometreDigits } from '../format/number.ts';
import styles from './budget.module.css';
import type { BudgetFigures } from './budget-figures.ts';
import { ShareBars } from './ShareBars.tsx';

const WORDS = { pass: 'Within the budget', marginal: 'On the edge', fail: 'Over the budget' } as const;

/** Whether the budget holds, what makes it up, and its sums. */
export function BudgetSums({ figures }: { figures: BudgetFigures }) {
  const { sums, limit, outcome, byChance } = figures;
  const room = (value: number): string => `${marginDigits(value, limit)} µm ${value > limit ? 'over' : 'left'}`;
  return (
    <section aria-label="Sums">
      <p
        className={styles.total}
        data-outcome={byChance && outcome === 'pass' ? 'marginal' : outcome}
        data-testid="budget-total"
      >
        <b>{WORDS[outcome]}:</b> {micrometreDigits(sums.total)} of {fieldText(limit * 1000)} µm, {room(sums.total)}
        {byChance && ', by root-sum-square only: the worst case does not fit'}
      </p>
      <ShareBars figures={figures} />
      <dl className={styles.sums}>
        {(
          [
            ['Systematic, added', sums.systematic, ''],
            ['Independent, root-sum-square', sums.independent, ''],
            ['Worst case, all added', sums.worstCase, room(sums.worstCase)],
          ] as const
        ).map(([name, value, more]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              {micrometreDigits(value)} µm {more !== '' && <small>{more}</small>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
