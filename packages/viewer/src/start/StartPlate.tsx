import { materialPresets } from '@flathead/solver';
import { StartChoice } from './StartChoice.tsx';
import { StartField } from './StartField.tsx';
import styles from './start.module.css';
import type { Answers } from './use-head-draft.ts';

const MATERIALS = Object.entries(materialPresets).map(([value, { title }]) => ({ value, label: title }));

interface StartPlateProps {
  readonly answers: Answers;
  readonly part: 'body' | 'frame';
  /** Meaning and range of its thickness. */
  readonly help: string;
}

/** What a plate of the head is made of, and how thick it is. Nothing where the draft has none. */
export function StartPlate({ answers, part, help }: StartPlateProps) {
  const plate = answers.draft[part];
  if (plate === undefined) return null;
  return (
    <div className={styles.pairs}>
      <StartChoice
        label="Material"
        name={`${part === 'body' ? 'Body' : 'Frame'} material`}
        value={plate.material}
        options={MATERIALS}
        wide
        choose={(value) => answers.answer(`${part}.material`, value)}
      />
      <StartField answers={answers} path={`${part}.thickness`} label="Thickness" unit="mm" help={help} />
    </div>
  );
}
