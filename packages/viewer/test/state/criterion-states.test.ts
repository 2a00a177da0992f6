import { describe, expect, it } from 'vitest';
import { criterionStates } from '../../src/state/criterion-states.ts';
import type { Solved } from '../../src/state/run-store.ts';
import { full, live } from './answers.ts';

describe('criterionStates', () => {
  const said = (solved: Solved, of: Solved | null) =>
    criterionStates({ solved, full: of }).map(({ kind, state, verdict }) => [kind, state, verdict !== null]);

  it('says what a full answer judges and what a material lacks', () => {
    expect(said(full, full)).toEqual([
      ['bow', 'judged', true],
      ['strength', 'judged', true],
      ['failureProbability', 'unknown', false],
    ]);
  });

  it('keeps what the full answer said of stress while a live one is shown', () => {
    expect(live.result.verdict.criteria.map(({ criterion }) => criterion)).toEqual(['bow']);
    expect(said(live, full)).toEqual([
      ['bow', 'judged', true],
      ['strength', 'kept', true],
      ['failureProbability', 'unknown', false],
    ]);
  });

  it('waits for what was never judged', () => {
    expect(said(live, null).slice(1)).toEqual([
      ['strength', 'awaited', false],
      ['failureProbability', 'awaited', false],
    ]);
  });
});
