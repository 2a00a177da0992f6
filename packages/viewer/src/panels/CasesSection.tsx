import { Icon } from '../app/icons.tsx';
import { withNewCase } from '../state/recipe-edits.ts';
import { useModel, useRefusal, useWorkbench } from '../state/use-workbench.ts';
import { CaseRow } from './CaseRow.tsx';
import { Section } from './Section.tsx';
import styles from './section.module.css';

const KEYS = ['name', 'touched', 'temperature', 'gradient'].concat(
  ['', '.diameter', '.edge', '.centre'].map((key) => `touched.wafer${key}`),
);

/** The states of the head that are judged. */
export function CasesSection() {
  const { history } = useWorkbench();
  const count = useModel((model) => model.cases.length);
  const fault = useRefusal();
  const claimed = [
    ...Array.from({ length: count }, (_, i) => KEYS.map((key) => `cases.${i}.${key}`)).flat(),
    // A name in a list of sites, as `cases.0.touched.2`.
    ...(fault !== null && /^cases\.\d+\.touched\.\d+$/.test(fault.path) ? [fault.path] : []),
  ];
  return (
    <Section title="Load cases" aside="the worst decides" of="cases" claimed={claimed}>
      <div className={styles.table} style={{ gridTemplateColumns: '1fr 76px 45px 45px 18px', columnGap: 4 }}>
        <span className={styles.column}>Name</span>
        <span className={styles.column}>Touched</span>
        <span className={styles.columnRight}>°C</span>
        <span className={styles.columnRight}>Grad. K</span>
        <span />
        {Array.from({ length: count }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a case is its place in the list; names may repeat while typed
          <CaseRow key={i} index={i} only={count === 1} />
        ))}
      </div>
      <div className={styles.foot}>
        <button type="button" className={styles.add} onClick={() => history.edit(withNewCase)}>
          <Icon name="plus" size={14} /> Add a case
        </button>
      </div>
    </Section>
  );
}
