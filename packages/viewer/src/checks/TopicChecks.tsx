import type { VerificationRow } from '@flathead/solver/verification';
import { Icon } from '../app/icons.tsx';
import page from '../app/page.module.css';
import { BASES, type CheckTopic, checkNumber, shareText, stateOf, unitText } from './check-text.ts';
import styles from './checks.module.css';

interface TopicChecksProps {
  readonly topic: CheckTopic;
  readonly rows: ReadonlyMap<number, VerificationRow>;
  readonly open: boolean;
  readonly busy: boolean;
  readonly onToggle: () => void;
  readonly onRun: () => void;
}

const WORDS = { open: 'not run', within: 'within', outside: 'outside' };

/** A topic of the book: a mark for each case, and unfolded a line for each with its source. */
export function TopicChecks({ topic: { name, cases }, rows, open, busy, onToggle, onRun }: TopicChecksProps) {
  const run = cases.flatMap(({ index }) => rows.get(index) ?? []);
  const within = run.filter((row) => row.within).length;
  const told = run.length === 0 ? `${cases.length} cases` : `${within} of ${run.length} within`;
  return (
    <section className={styles.topic} data-testid={`topic-${name}`} aria-label={name}>
      <div className={styles.head}>
        <button type="button" className={styles.unfold} aria-expanded={open} onClick={onToggle}>
          <Icon name="down" size={14} />
          <span className={styles.name}>{name}</span>
        </button>
        <span className={styles.marks} aria-hidden="true">
          {cases.map(({ index }) => (
            <i key={index} className={styles.mark} data-state={stateOf(rows.get(index))} />
          ))}
        </span>
        <span className={styles.told}>{told}</span>
        <button type="button" className={page.button} disabled={busy} aria-label={`Run ${name}`} onClick={onRun}>
          Run
        </button>
      </div>
      {open && (
        <table className={styles.table}>
          <thead>
            <tr>
              {['Case', 'Expected', 'Computed', 'Deviation', 'Tolerance', 'Source', 'Result'].map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {cases.map((each) => {
              const row = rows.get(each.index);
              const state = stateOf(row);
              const last = row?.values.at(-1);
              return (
                <tr key={each.index} data-state={state} data-testid={`check-${each.index}`}>
                  <th scope="row">
                    {each.model}
                    <span className={styles.quantity}>{each.quantity}</span>
                  </th>
                  <td>
                    {checkNumber(each.expected)} <span className={styles.unit}>{unitText(each.unit)}</span>
                  </td>
                  <td>{last === undefined ? '\u2013' : checkNumber(last)}</td>
                  <td>{row === undefined ? '\u2013' : shareText(row.deviation, each)}</td>
                  <td title={each.why}>{shareText(each.tolerance, each)}</td>
                  <td className={styles.source}>
                    {each.source} <span className={styles.basis}>{BASES[each.basis]}</span>
                  </td>
                  <td className={styles.state}>
                    <i className={styles.mark} data-state={state} aria-hidden="true" /> {WORDS[state]}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
    </section>
  );
}
