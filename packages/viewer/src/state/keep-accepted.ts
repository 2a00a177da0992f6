import type { HeadModel } from '@flathead/solver';
import { typeset } from '../format/number.ts';
import type { HeadStore } from './head-store.ts';
import type { History } from './history.ts';
import { type NoticeStore, notify } from './notice-store.ts';
import type { PointerStore } from './pointer-store.ts';
import type { RunStore } from './run-store.ts';

/** Why a solver gave no answer that says nothing of the head. */
const NO_JUDGEMENT = ['CANCELLED', 'WORKER_LOST'];

/** A move on the stage. */
interface Moved {
  readonly key: string;
  /** The last of its states that was solved, its first included; `null` = none is known. */
  accepted: HeadModel | null;
  /** As it was let go; `null` while it lasts. */
  released: HeadModel | null;
}

/**
 * Puts a head back that was let go on the stage in a state that the solver refuses: to the last state of that move that was
 * solved, within the same step of undo, and says why. A head that was refused before the move stays as it is put.
 */
export function keepAccepted({
  head,
  history,
  pointer,
  run,
  notices,
}: {
  readonly head: HeadStore;
  readonly history: History;
  readonly pointer: PointerStore;
  readonly run: RunStore;
  readonly notices: NoticeStore;
}): void {
  let moved: Moved | null = null;

  const settle = (): void => {
    const { refusal, solved } = run.getState();
    const { model } = head.getState();
    if (moved === null || moved.released === null) return;
    if (model !== moved.released || solved?.model === model) moved = null;
    else if (refusal?.model === model) {
      const { key, accepted } = moved;
      moved = null;
      if (accepted === null || NO_JUDGEMENT.includes(refusal.fault.code)) return;
      history.amend(() => accepted);
      const title = `${nameOf(model, key)} was put back to the last place that can be solved`;
      notify(notices, { tone: 'info', title, text: typeset(refusal.fault.message), brief: true });
      const stop = head.subscribe(({ model: next }) => {
        if (next === accepted) return;
        stop();
        notices.setState((state) => ({ notices: state.notices.filter((notice) => notice.title !== title) }));
      });
    }
  };

  pointer.subscribe(({ dragged }, before) => {
    if (dragged === before.dragged) return;
    const { model } = head.getState();
    if (dragged !== null) {
      const { solved, refusal } = run.getState();
      const first = refusal?.model === model ? null : solved?.model === model ? model : null;
      const chained = moved?.released === model ? moved.accepted : null;
      moved = { key: dragged, accepted: first ?? chained, released: null };
    } else if (moved !== null) {
      moved.released = model;
      settle();
    }
  });
  run.subscribe(({ solved, refusal }, before) => {
    if (moved !== null && moved.released === null && moved.accepted !== null && solved && solved !== before.solved)
      moved.accepted = solved.model;
    if (refusal !== before.refusal || solved !== before.solved) settle();
  });
}

function nameOf({ fasteners }: HeadModel, key: string): string {
  const [kind, index] = key.split(' ');
  if (kind === 'fastener') return `Fastener ${fasteners[Number(index)]?.name ?? ''}`;
  return kind === 'rib' ? 'The rib' : kind === 'keepOut' ? 'The keep-out' : 'The site pitch';
}
