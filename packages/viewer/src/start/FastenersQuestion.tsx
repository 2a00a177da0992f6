import { screws } from '@flathead/solver';
import { PresetRow } from './PresetRow.tsx';
import { FASTENERS } from './presets.ts';
import { Question } from './Question.tsx';
import { StartChoice } from './StartChoice.tsx';
import styles from './start.module.css';
import type { Answers } from './use-head-draft.ts';

const SCREWS = Object.keys(screws).map((value) => ({ value, label: value }));

export function FastenersQuestion({ answers }: { answers: Answers }) {
  return (
    <Question title="What holds it?">
      <PresetRow label="Fasteners" presets={FASTENERS} answers={answers} />
      <div className={styles.pairs}>
        <StartChoice
          label="Screw"
          name="Screw"
          value={answers.draft.screw}
          options={SCREWS}
          choose={(value) => answers.answer('screw', value)}
        />
      </div>
    </Question>
  );
}
