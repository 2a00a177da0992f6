import { PresetRow } from './PresetRow.tsx';
import { BODIES } from './presets.ts';
import { Question } from './Question.tsx';
import { StartPlate } from './StartPlate.tsx';
import type { Answers } from './use-head-draft.ts';

export function BodyQuestion({ answers }: { answers: Answers }) {
  return (
    <Question title="What is the body made of?">
      <PresetRow label="Body" presets={BODIES} answers={answers} />
      <StartPlate
        answers={answers}
        part="body"
        help="Thickness of the body; bending stiffness grows with its cube. 0.001 to 1000 mm."
      />
    </Question>
  );
}
