import { useStore } from 'zustand';
import { PageLead } from '../app/PageLead.tsx';
import page from '../app/page.module.css';
import { leavingStorage } from '../keeping/storage.ts';
import { useModel, useRun, useStaleness } from '../state/use-workbench.ts';
import { BudgetSums } from './BudgetSums.tsx';
import { BudgetTable } from './BudgetTable.tsx';
import styles from './budget.module.css';
import { budgetFigures, readMicrometres, twoLimits } from './budget-figures.ts';
import { type Budget, budgetOf, createBudgetStore, writeBudget } from './budget-store.ts';

const budgetStore = createBudgetStore(leavingStorage());

/** What uses up the planarity of the head on the bench, and what is left of it. */
export function BudgetPage() {
  const head = useModel(({ name }) => name);
  const model = useModel((model) => model);
  const budget = useStore(budgetStore, (state) => budgetOf(state, head));
  const full = useRun((run) => run.full);
  const stale = useStaleness();
  const bow = full?.result.verdict.criteria.find(({ criterion }) => criterion === 'bow');
  const figures = bow === undefined ? null : budgetFigures(budget, bow);
  const write = (change: (budget: Budget) => Budget): void => writeBudget(budgetStore, head, change);
  const writeContributors = (change: (before: Budget['contributors']) => Budget['contributors']): void =>
    write((old) => ({ ...old, contributors: change(old.contributors) }));
  const limitBad = readMicrometres(budget.limit) === null || readMicrometres(budget.limit) === 0;
  return (
    <div className={page.page}>
      <PageLead
        title="Planarity budget"
        about={`What uses up the planarity of ${head}. Systematic contributors are the same way in every head and add up; independent ones add up by root-sum-square.`}
      >
        <label className={styles.limit}>
          Total allowed
          <span className={styles.box} data-trouble={limitBad || undefined}>
            <input
              inputMode="decimal"
              data-testid="budget-limit"
              aria-invalid={limitBad}
              value={budget.limit}
              onChange={({ currentTarget: { value } }) => write((old) => ({ ...old, limit: value }))}
            />
            µm
          </span>
        </label>
      </PageLead>
      {(full?.model !== model || stale !== null) && (
        <p className={page.notice} role="status">
          {full === null
            ? 'The bow follows with the first full answer.'
            : 'The bow is of the last head that was solved.'}
        </p>
      )}
      <BudgetTable {...{ bow, figures }} contributors={budget.contributors} write={writeContributors} />
      {figures === null ? (
        <p className={page.notice} role="status">
          The sums follow when every value is a number of 0 or more.
        </p>
      ) : (
        <>
          <BudgetSums figures={figures} />
          {bow !== undefined && (
            <p className={styles.note} data-testid="budget-and-verdict">
              {twoLimits(bow, figures.outcome)}
            </p>
          )}
        </>
      )}
      <p className={styles.note}>
        Replace the values by your own: those that stand here to begin with are rules of thumb, and adding up this way
        is common practice, no source. The budget is kept in this browser by the name of the head.
      </p>
    </div>
  );
}
