import type { HeadModel } from '@flathead/solver';
import { typeset } from '../format/number.ts';
import type { RunState } from './run-store.ts';

const OUTCOMES = { pass: 'Pass', marginal: 'Marginal', fail: 'Fail' } as const;

/** What is read out of the answer to a model; `null` while there is no final one. */
export function announcement(
  { solved, refusal }: Pick<RunState, 'solved' | 'refusal'>,
  model: HeadModel,
): string | null {
  if (refusal?.model === model) return 'No answer to this head. The last good answer is shown.';
  if (solved?.model !== model || solved.quality !== 'full') return null;
  const { outcome, sentence } = solved.result.verdict;
  return `${OUTCOMES[outcome]}. ${typeset(sentence)}`;
}
