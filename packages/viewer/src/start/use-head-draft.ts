import { draftHead, type FaultReport, faultReport, type HeadDraft, type HeadModel } from '@flathead/solver';
import { useMemo, useState } from 'react';
import { withValue } from '../state/set-value.ts';
import { FIRST_DRAFT } from './presets.ts';

/** What was answered so far, and how to answer. */
export interface Answers {
  readonly draft: HeadDraft;
  /** Why no head can be drafted from the answers; `null` when one can. */
  readonly fault: FaultReport | null;
  /** Takes the answers of a starting point. */
  choose(draft: HeadDraft): void;
  answer(path: string, value: number | string | undefined): void;
  /** Why the text that stands in a field is no answer; `null` where it is one. */
  doubt(path: string, reason: string | null): void;
}

interface DraftedHead {
  readonly answers: Answers;
  /** The head that follows; `null` where none does. */
  readonly model: HeadModel | null;
  /** That, or else the last there was. */
  readonly last: HeadModel | null;
  /** Why there is no head to be made, in words; `null` where there is one. */
  readonly refusal: string | null;
}

export const NO_NAME = 'A head needs a name, for the shelf and the report.';

/** The answers of the guided start while they are given, and the head that follows from them. */
export function useHeadDraft(): DraftedHead {
  const [draft, setDraft] = useState(FIRST_DRAFT);
  const [doubts, setDoubts] = useState<ReadonlyMap<string, string>>(new Map());
  const { model, fault } = useMemo(() => drafted(draft), [draft]);
  const [last, setLast] = useState(model);
  if (model !== null && model !== last) setLast(model);
  const answers: Answers = {
    draft,
    fault,
    choose: setDraft,
    answer: (path, value) => setDraft((now) => withAnswer(now, path, value)),
    doubt: (path, reason) =>
      setDoubts((now) => {
        const next = new Map([...now].filter(([other]) => other !== path));
        return reason === null ? next : next.set(path, reason);
      }),
  };
  const [doubtful] = doubts;
  const refusal = doubtful?.[1] ?? (fault?.path === 'name' ? NO_NAME : (fault?.message ?? null));
  return { answers, model, last, refusal };
}

function withAnswer(draft: HeadDraft, path: string, value: number | string | undefined): HeadDraft {
  return Object.assign({}, draft, withValue(draft, path, value));
}

function drafted(draft: HeadDraft): { readonly model: HeadModel | null; readonly fault: FaultReport | null } {
  try {
    return { model: draftHead(draft), fault: null };
  } catch (thrown) {
    return { model: null, fault: faultReport(thrown) };
  }
}
