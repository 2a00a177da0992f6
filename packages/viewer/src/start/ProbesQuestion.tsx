import fields from '../panels/field.module.css';
import { PresetRow } from './PresetRow.tsx';
import { PROBES } from './presets.ts';
import { Question } from './Question.tsx';
import { StartField } from './StartField.tsx';
import styles from './start.module.css';
import type { Answers } from './use-head-draft.ts';

export function ProbesQuestion({ answers }: { answers: Answers }) {
  return (
    <Question title="What do its probes push with?">
      <PresetRow label="Probes" presets={PROBES} answers={answers} />
      <div className={styles.pairs}>
        <StartField
          answers={answers}
          path="probes.count"
          label="Probes a site"
          help="Probes in each site. Whole number, 1 to 20000."
        />
        <StartField
          answers={answers}
          path="probes.pitch"
          label="Pitch"
          unit="mm"
          help="Hole to hole in the drilled field; holes are 60 % of it wide. 0.02 to 10 mm."
        />
        <StartField
          answers={answers}
          path="probes.preload"
          label="Preload, each"
          unit="N"
          help="Force of one probe against the mounted head, from the data of the probe. 0 to 100 N."
        />
        <StartField
          answers={answers}
          path="probes.touchdown"
          label="At touchdown"
          unit="N"
          help="Force of one probe on the wafer, from the data of the probe. 0 to 100 N."
          empty="not given"
        />
      </div>
      <p className={fields.note}>The forces offered are orders of size. Use those of your probe.</p>
    </Question>
  );
}
