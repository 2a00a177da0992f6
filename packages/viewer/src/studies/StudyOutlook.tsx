import type { StudyName } from '@flathead/solver';
import { useRun } from '../state/use-workbench.ts';
import { aboutTime, onceSolved, outlookOf } from './outlook.ts';
import { CREW } from './runs-here.ts';
import styles from './studies.module.css';

const ABOUT: Readonly<Record<StudyName, string>> = {
  placement:
    'Tries positions all over the head and solves the best of them in full. All load cases count; keep-outs, probe fields and edges stay free.',
  sweep:
    'Solves the head again for each value, and between two values on either side of a limit looks for the one that just passes.',
  tolerance:
    'Solves many heads whose parts are off by chance, says how many fail, and which part of it comes from what.',
  sites: 'Stretches the head to other site patterns and counts the touchdowns that each takes over a wafer.',
};

interface StudyOutlookProps {
  readonly study: StudyName;
  /** `null` while a field holds no usable value. */
  readonly plan: Readonly<Record<string, unknown>> | null;
}

/** Before a study is run: what it does, what will come, and how long that takes. */
export function StudyOutlook({ study, plan }: StudyOutlookProps) {
  const solved = useRun(({ full }) => (full === null ? null : onceSolved(full.result.timings)));
  const outlook = plan === null ? null : outlookOf(study, plan);
  return (
    <div className={styles.outlook} data-testid="study-outlook">
      <p className={styles.about}>{ABOUT[study]}</p>
      {outlook !== null && (
        <>
          <h2 className={styles.coming}>What will come</h2>
          <ul>
            {outlook.gives.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          <p className={styles.note}>
            {outlook.heads === null
              ? 'Some seconds on a wide grid, minutes where every place and several numbers of fasteners are tried.'
              : `${outlook.heads} ${outlook.heads === 1 ? 'head is' : 'heads are'} solved${solved === null ? '' : `, ${aboutTime((outlook.heads * solved) / CREW)} at the pace of this head on the bench`}.`}{' '}
            It goes on while you work on other pages, and what is there is kept when you cancel.
          </p>
        </>
      )}
    </div>
  );
}
