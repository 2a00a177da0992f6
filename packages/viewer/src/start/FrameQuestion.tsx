import { FieldTrouble } from '../panels/FieldTrouble.tsx';
import { PresetRow } from './PresetRow.tsx';
import { FRAMES } from './presets.ts';
import { Question } from './Question.tsx';
import { StartPlate } from './StartPlate.tsx';
import type { Answers } from './use-head-draft.ts';

export function FrameQuestion({ answers }: { answers: Answers }) {
  const { fault } = answers;
  return (
    <Question title="Does a frame stiffen it?">
      <PresetRow label="Frame" presets={FRAMES} answers={answers} />
      <FieldTrouble id="start-ribs-trouble" message={fault?.path === 'frame.ribs' ? fault.message : null} />
      <StartPlate answers={answers} part="frame" help="Thickness of the frame and its ribs. 0.001 to 1000 mm." />
    </Question>
  );
}
