import type { CriterionVerdict } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import page from '../app/page.module.css';
import { BowRow } from './BowRow.tsx';
import styles from './budget.module.css';
import type { BudgetFigures } from './budget-figures.ts';
import { type Budget, type Contributor, MOST_CONTRIBUTORS } from './budget-store.ts';
import { ContributorRow } from './ContributorRow.tsx';

interface BudgetTableProps {
  readonly bow: CriterionVerdict | undefined;
  readonly contributors: readonly Contributor[];
  /** `null` while a value is none. */
  readonly figures: BudgetFigures | null;
  /** Changes the contributors. */
  write(change: (before: Budget['contributors']) => Budget['contributors']): void;
}

/** The bow and what uses up planarity beside it, each with the room that it has. */
export function BudgetTable({ bow, contributors, figures, write }: BudgetTableProps) {
  return (
    <>
      <div className={page.wide}>
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
            <BowRow bow={bow} line={figures?.lines[0]} />
            {contributors.map((contributor, i) => (
              <ContributorRow
                // biome-ignore lint/suspicious/noArrayIndexKey: a contributor is its place
                key={i}
                contributor={contributor}
                line={figures?.lines[i + 1]}
                place={i + 1}
                put={(part) => write((old) => old.with(i, { ...old[i], ...part }))}
                remove={() => write((old) => old.toSpliced(i, 1))}
              />
            ))}
          </tbody>
        </table>
      </div>
      <button
        type="button"
        className={styles.add}
        data-testid="budget-add"
        disabled={contributors.length >= MOST_CONTRIBUTORS}
        onClick={() => write((old) => [...old, { name: 'Contributor', value: '0', adds: 'independent' }])}
      >
        <Icon name="plus" size={13} /> Another contributor
      </button>
    </>
  );
}
