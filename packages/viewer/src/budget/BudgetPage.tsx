import { NativeSelect } from '@mantine/core';
import { useStore } from 'zustand';
import { Icon } from '../app/icons.tsx';
import { PageLead } from '../app/PageLead.tsx';
import { fieldText, limitDigits, marginDigits, micrometreDigits } from '../format/number.ts';
import { useModel, useRun, useStaleness } from '../state/use-workbench.ts';
import styles from './budget.module.css';
import { type BudgetFigures, type BudgetLine, budgetFigures, readMicrometres, twoLimits } from './budget-figures.ts';
import {
  type Budget,
  budgetOf,
  type Contributor,
  createBudgetStore,
  MOST_CONTRIBUTORS,
  writeBudget,
} from './budget-store.ts';
import { ShareBars } from './ShareBars.tsx';

const budgetStore = createBudgetStore(browserStorage());

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
  const put = (i: number, part: Partial<Contributor>): void =>
    write((old) => ({ ...old, contributors: old.contributors.with(i, { ...old.contributors[i], ...part }) }));
  const limitBad = readMicrometres(budget.limit) === null || readMicrometres(budget.limit) === 0;
  return (
    <div className={styles.page}>
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
        <p className={styles.stale} role="status">
          {full === null
            ? 'The bow follows with the first full answer.'
            : 'The bow is of the last head that was solved.'}
        </p>
      )}
      <div className={styles.wide}>
        <table className={styles.table} data-testid="budget-table">
          <thead>
            <tr>
              {['Contributor', 'µm', 'Kind', 'may be at most, µm', 'left, µm'].map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            <tr data-testid="budget-bow">
              <th scope="row">
                Bow
                {bow && (
                  <small>
                    {' '}
                    of the verdict: site {bow.site}, case {bow.case}; limit of the head {limitDigits(bow.limit)} µm
                  </small>
                )}
              </th>
              <td className={styles.number}>
                {bow === undefined ? '–' : micrometreDigits(bow.value)}
                {bow?.error ? <small> ±{(bow.error * 1000).toFixed(2)}</small> : null}
              </td>
              <td>systematic</td>
              <Room line={figures?.lines[0]} />
              <td />
            </tr>
            {budget.contributors.map((contributor, i) => (
              <ContributorRow
                // biome-ignore lint/suspicious/noArrayIndexKey: a contributor is its place
                key={i}
                contributor={contributor}
                line={figures?.lines[i + 1]}
                place={i + 1}
                put={(part) => put(i, part)}
                remove={() => write((old) => ({ ...old, contributors: old.contributors.toSpliced(i, 1) }))}
              />
            ))}
          </tbody>
        </table>
      </div>
      <button
        type="button"
        className={styles.add}
        data-testid="budget-add"
        disabled={budget.contributors.length >= MOST_CONTRIBUTORS}
        onClick={() =>
          write((old) => ({
            ...old,
            contributors: [...old.contributors, { name: 'Contributor', value: '0', adds: 'independent' }],
          }))
        }
      >
        <Icon name="plus" size={13} /> Another contributor
      </button>
      {figures === null ? (
        <p className={styles.stale} role="status">
          The sums follow when every value is a number of 0 or more.
        </p>
      ) : (
        <>
          <Sums figures={figures} />
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

function ContributorRow({
  contributor: { name, value, adds },
  line,
  place,
  put,
  remove,
}: {
  contributor: Contributor;
  line: BudgetLine | undefined;
  place: number;
  put: (part: Partial<Contributor>) => void;
  remove: () => void;
}) {
  const bad = readMicrometres(value) === null;
  const title = name === '' ? `Contributor ${place}` : name;
  return (
    <tr data-testid={`budget-row-${place}`}>
      <th scope="row">
        <input
          className={styles.name}
          aria-label={`Name of contributor ${place}`}
          maxLength={200}
          value={name}
          onChange={(event) => put({ name: event.currentTarget.value })}
        />
      </th>
      <td className={styles.number}>
        <span className={styles.box} data-trouble={bad || undefined}>
          <input
            inputMode="decimal"
            data-testid={`budget-value-${place}`}
            aria-label={`${title}, µm`}
            aria-invalid={bad}
            title={bad ? `"${value}" is no number of 0 or more.` : undefined}
            value={value}
            onChange={(event) => put({ value: event.currentTarget.value })}
          />
        </span>
      </td>
      <td>
        <NativeSelect
          size="xs"
          className={styles.choice}
          aria-label={`How ${title} adds up`}
          data-testid={`budget-adds-${place}`}
          data={['systematic', 'independent']}
          value={adds}
          onChange={(event) => put({ adds: event.currentTarget.value === 'systematic' ? 'systematic' : 'independent' })}
        />
      </td>
      <Room line={line} />
      <td>
        <button type="button" className={styles.remove} aria-label={`Remove ${title}`} onClick={remove}>
          <Icon name="cross" size={13} />
        </button>
      </td>
    </tr>
  );
}

/** What a contributor may be while all others stay, and what that leaves of it. */
function Room({ line }: { line: BudgetLine | undefined }) {
  if (line === undefined)
    return (
      <>
        <td className={styles.number}>–</td>
        <td className={styles.number}>–</td>
      </>
    );
  const { most, value } = line;
  if (most === null)
    return (
      <td colSpan={2} className={styles.full}>
        the others fill it
      </td>
    );
  const left = most - value;
  return (
    <>
      <td className={styles.number}>{micrometreDigits(most)}</td>
      <td className={left < 0 ? styles.over : styles.number}>
        {left < 0 ? '−' : ''}
        {micrometreDigits(left)}
      </td>
    </>
  );
}

const WORDS = { pass: 'Within the budget', marginal: 'On the edge', fail: 'Over the budget' } as const;

function Sums({ figures }: { figures: BudgetFigures }) {
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

/** `null` where the browser forbids it. */
function browserStorage(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
