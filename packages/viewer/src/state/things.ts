import type { HeadModel } from '@flathead/solver';
import { indexOf, thingOf } from './grips.ts';
import { withNewFastener, withoutFastener } from './recipe-edits.ts';
import {
  withFastenerCopy,
  withKeepOutCopy,
  withNewKeepOut,
  withNewRib,
  withoutKeepOut,
  withoutRib,
  withRibCopy,
} from './stage-edits.ts';
import type { Workbench } from './workbench.ts';

type Kind = 'fastener' | 'keepOut' | 'rib';
type Bench = Pick<Workbench, 'head' | 'history' | 'pointer'>;

interface KindEdits {
  readonly count: (model: HeadModel) => number;
  readonly add: (model: HeadModel) => HeadModel;
  readonly copy: (model: HeadModel, index: number) => HeadModel;
  readonly remove: (model: HeadModel, index: number) => HeadModel;
}

const KINDS: Readonly<Record<Kind, KindEdits>> = {
  fastener: {
    count: ({ fasteners }) => fasteners.length,
    add: withNewFastener,
    copy: withFastenerCopy,
    remove: withoutFastener,
  },
  keepOut: {
    count: ({ keepOuts }) => keepOuts?.length ?? 0,
    add: withNewKeepOut,
    copy: withKeepOutCopy,
    remove: withoutKeepOut,
  },
  rib: { count: ({ frame }) => frame?.ribs?.length ?? 0, add: withNewRib, copy: withRibCopy, remove: withoutRib },
};

function kindOf(key: string): Kind | null {
  const [kind] = key.split(' ');
  return kind === 'fastener' || kind === 'keepOut' || kind === 'rib' ? kind : null;
}

/** Adds a thing and chooses it, ready to be dragged, nudged or typed to its place. */
export function addThing({ head, history, pointer }: Bench, kind: Kind): void {
  const { add, count } = KINDS[kind];
  const before = count(head.getState().model);
  pointer.setState({ selected: `${kind} ${before}`, typed: null });
  history.edit(add);
}

/** Copies the thing of a grip and chooses the copy. */
export function copyThing({ head, history, pointer }: Bench, key: string): void {
  const kind = kindOf(key);
  if (kind === null) return;
  const { copy, count } = KINDS[kind];
  pointer.setState({ selected: `${kind} ${count(head.getState().model)}`, typed: null });
  history.edit((model) => copy(model, indexOf(key)));
}

/** Removes the thing of a grip. */
export function removeThing({ history, pointer }: Bench, key: string): void {
  const kind = kindOf(key);
  if (kind === null) return;
  pointer.setState({ selected: null, typed: null });
  history.edit((model) => KINDS[kind].remove(model, indexOf(thingOf(key))));
}
