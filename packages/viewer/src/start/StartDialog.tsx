import { useRef } from 'react';
import { flushSync } from 'react-dom';
import { PageDialog } from '../app/PageDialog.tsx';
import { HelpLine } from '../panels/HelpLine.tsx';
import { useWorkbench } from '../state/use-workbench.ts';
import { withVariant } from '../state/workbook.ts';
import { BodyQuestion } from './BodyQuestion.tsx';
import { FastenersQuestion } from './FastenersQuestion.tsx';
import { FrameQuestion } from './FrameQuestion.tsx';
import { LimitQuestion } from './LimitQuestion.tsx';
import { NameQuestion } from './NameQuestion.tsx';
import { ProbesQuestion } from './ProbesQuestion.tsx';
import { SitesQuestion } from './SitesQuestion.tsx';
import { StartOutcome } from './StartOutcome.tsx';
import styles from './start.module.css';
import { useHeadDraft } from './use-head-draft.ts';

/** From nothing to a head that can be solved, by few questions; sizes follow from the answers. */
export function StartDialog({ onClose }: { onClose: () => void }) {
  const { head, history, view } = useWorkbench();
  const dialog = useRef<HTMLDivElement>(null);
  const { answers, model, last, refusal } = useHeadDraft();
  const make = (): void => {
    if (model === null || refusal !== null) {
      const refused = dialog.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
      refused?.focus();
      return;
    }
    history.editBook((book) => withVariant(book, model));
    // What follows is compared with this head, not with the one that was there.
    const reference = head.getState().book.bench;
    view.setState(({ homeCalls }) => ({ caseName: null, exaggeration: null, homeCalls: homeCalls + 1, reference }));
    // Nothing outside takes the focus while the dialog is open.
    flushSync(onClose);
    document.querySelector<HTMLElement>('[data-testid="verdict"]')?.focus();
  };
  return (
    <PageDialog title="New head" testId="start" wide onClose={onClose}>
      <div className={styles.columns} ref={dialog}>
        <HelpLine
          className={styles.questions}
          label="Questions"
          idle="Choose a starting point, then change what differs. Everything can be edited later."
        >
          <div className={styles.two}>
            <NameQuestion answers={answers} />
            <SitesQuestion answers={answers} />
            <ProbesQuestion answers={answers} />
            <BodyQuestion answers={answers} />
            <FrameQuestion answers={answers} />
            <FastenersQuestion answers={answers} />
            <LimitQuestion answers={answers} />
          </div>
        </HelpLine>
        <StartOutcome drawn={last} model={model} refusal={refusal} make={make} cancel={onClose} />
      </div>
    </PageDialog>
  );
}
