import { PresetRow } from './PresetRow.tsx';
import { PATTERNS } from './presets.ts';
import { Question } from './Question.tsx';
import { StartField } from './StartField.tsx';
import styles from './start.module.css';
import type { Answers } from './use-head-draft.ts';

const DIE = 'Size of a die with its scribe line. 0.001 to 100 mm.';
const SKIP = 'Dies left out between neighbouring sites; skipping makes room. Whole number, 0 to 20.';

export function SitesQuestion({ answers }: { answers: Answers }) {
  return (
    <Question title="Which sites are tested at once?">
      <PresetRow label="Site pattern, rows by columns" presets={PATTERNS} answers={answers} />
      <div className={styles.pairs}>
        <StartField answers={answers} path="rows" label="Rows" help="Rows of sites, along y. Whole number, 1 to 16." />
        <StartField
          answers={answers}
          path="columns"
          label="Columns"
          help="Sites in a row, along x. Whole number, 1 to 16."
        />
        <StartField answers={answers} path="die.0" label="Die along x" unit="mm" help={DIE} />
        <StartField answers={answers} path="die.1" label="Die along y" unit="mm" help={DIE} />
        <StartField answers={answers} path="skip.0" label="Dies skipped, x" help={SKIP} />
        <StartField answers={answers} path="skip.1" label="Dies skipped, y" help={SKIP} />
      </div>
    </Question>
  );
}
