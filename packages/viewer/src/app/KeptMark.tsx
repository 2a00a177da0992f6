import { useStore } from 'zustand';
import type { KeepingState } from '../keeping/keeper.ts';
import { type Keeping, useKeeping } from './keep-work.ts';
import styles from './top-bar.module.css';

const WORDS: Readonly<Record<KeepingState['status'], readonly [short: string, long: string]>> = {
  kept: ['Saved here', 'All variants are saved in this browser.'],
  waiting: ['Keeping', 'The last edits are being kept in this browser.'],
  failed: ['Not kept', "The browser's storage refused your work. Save it as a file."],
  elsewhere: ['Not kept here', 'Another tab keeps your work. Press to go on in this one.'],
};

/** Whether the browser has what is on the page. */
export function KeptMark() {
  const keeping = useKeeping();
  return keeping && <Mark {...keeping} />;
}

function Mark({ keeper, turn }: Keeping) {
  const status = useStore(keeper.state, (state) => state.status);
  const [short, long] = WORDS[status];
  const mark = { className: styles.kept, title: long, 'data-testid': 'kept', 'data-status': status };
  return status === 'elsewhere' ? (
    <button type="button" {...mark} onClick={() => turn.take()}>
      {short}
    </button>
  ) : (
    <span {...mark} role="status" aria-live={status === 'failed' ? 'polite' : 'off'}>
      {short}
    </span>
  );
}
