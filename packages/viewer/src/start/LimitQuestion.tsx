import { Question } from './Question.tsx';
import { StartField } from './StartField.tsx';
import styles from './start.module.css';
import type { Answers } from './use-head-draft.ts';

export function LimitQuestion({ answers }: { answers: Answers }) {
  return (
    <Question title="What is the planarity limit?">
      <div className={styles.pairs}>
        <StartField
          answers={answers}
          path="bow"
          label="Bow, at most"
          unit="µm"
          scale={1000}
          help="Largest deviation of the site area from the plane of the fasteners. 1 to 10000 µm."
        />
      </div>
    </Question>
  );
}
