import type { RowStudyName, StudyRows, StudyService, TellRow } from '@flathead/solver';
import { describe, expect, it, vi } from 'vitest';
import type { ConnectStudy } from '../../src/studies/study-connection.ts';
import { createStudyRuns } from '../../src/studies/study-runs.ts';
import { sampleHead } from '../state/sample-head.ts';

interface Chunk {
  readonly indices: readonly number[];
  readonly tell: TellRow;
  finish(): void;
}

const row = (index: number): StudyRows['sweep'] => ({ index, settings: [index], outcome: 'pass' });

/** Workers that make rows when told to; what they were asked and how many still live. */
function crew(total: number) {
  const chunks: Chunk[] = [];
  const summaries: { readonly rows: readonly { readonly index: number }[]; readonly isWhole: boolean }[] = [];
  let alive = 0;
  const losers: ((reason: string) => void)[] = [];
  const service: StudyService = {
    prepare: async () => ({ ok: true, value: total }),
    rows: (_order, indices, tell) =>
      new Promise((resolve) => {
        const made = indices.map(row) as StudyRows[RowStudyName][];
        chunks.push({ indices, tell, finish: () => resolve({ ok: true, value: made }) });
      }),
    place: async () => ({ ok: true, value: { summary: null, text: '' } }),
    summarise: async (_order, rows, isWhole) => {
      summaries.push({ rows, isWhole });
      return { ok: true, value: { summary: null, text: `${rows.length} rows\n` } };
    },
    variant: async () => ({ ok: true, value: sampleHead }),
  };
  const connect: ConnectStudy = (onLost) => {
    alive++;
    losers.push(onLost);
    return { service, close: () => void alive--, forWorker: (tell) => tell };
  };
  return { connect, chunks, summaries, losers, alive: () => alive };
}

describe('studies of a visit', () => {
  it('gives every row out once, orders what comes back, adds up and leaves no worker behind', async () => {
    const { connect, chunks, summaries, alive } = crew(9);
    const runs = createStudyRuns(connect, 2);
    runs.run('sweep', sampleHead, {});
    await vi.waitFor(() => expect(chunks).toHaveLength(2));
    for (let k = 0; summaries.length === 0; k++) {
      chunks
        .toReversed()
        .find((chunk) => chunk.indices.length > 0)
        ?.finish();
      for (const chunk of chunks) chunk.finish();
      await new Promise((resolve) => setTimeout(resolve, 0));
      expect(k).toBeLessThan(50);
    }
    await vi.waitFor(() => expect(runs.store.getState().records.sweep?.state).toBe('done'));
    expect(chunks.flatMap(({ indices }) => indices).toSorted((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(summaries).toHaveLength(1);
    expect(summaries[0].isWhole).toBe(true);
    expect(summaries[0].rows.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(runs.store.getState().records.sweep?.text).toBe('9 rows\n');
    expect(alive()).toBe(0);
  });

  it('keeps what was told when it is stopped, and tells that together', async () => {
    const { connect, chunks, summaries, alive } = crew(9);
    const runs = createStudyRuns(connect, 1);
    runs.run('sweep', sampleHead, {});
    await vi.waitFor(() => expect(chunks).toHaveLength(1));
    chunks[0].tell(row(1));
    chunks[0].tell(row(0));
    runs.stop();
    chunks[0].tell(row(2));
    await vi.waitFor(() => expect(runs.store.getState().records.sweep?.state).toBe('stopped'));
    expect(runs.store.getState().records.sweep?.rows.map(({ index }) => index)).toEqual([0, 1]);
    expect(summaries).toMatchObject([{ isWhole: false }]);
    await vi.waitFor(() => expect(alive()).toBe(0));
    expect(chunks).toHaveLength(1);
  });

  it('is stopped by the next study, which starts from nothing and hears nothing of it', async () => {
    const { connect, chunks, alive } = crew(9);
    const runs = createStudyRuns(connect, 1);
    runs.run('sweep', sampleHead, {});
    await vi.waitFor(() => expect(chunks).toHaveLength(1));
    chunks[0].tell(row(0));
    runs.run('sweep', sampleHead, { another: true });
    // The first is still at its rows.
    chunks[0].tell(row(1));
    await vi.waitFor(() => expect(chunks).toHaveLength(2));
    chunks[1].tell(row(3));
    chunks[0].tell(row(2));
    // Rows are shown in batches.
    await new Promise((resolve) => setTimeout(resolve, 150));
    expect(runs.store.getState().records.sweep?.rows.map(({ index }) => index)).toEqual([3]);
    runs.stop();
    await vi.waitFor(() => expect(runs.store.getState().records.sweep?.state).toBe('stopped'));
    const { plan, rows, text } = runs.store.getState().records.sweep!;
    expect(plan).toEqual({ another: true });
    expect(rows.map(({ index }) => index)).toEqual([3]);
    expect(text).toBe('1 rows\n');
    await vi.waitFor(() => expect(alive()).toBe(0));
  });

  it('is told together as far as it came when a study of another kind takes its place', async () => {
    const { connect, chunks } = crew(9);
    const runs = createStudyRuns(connect, 1);
    runs.run('sweep', sampleHead, {});
    await vi.waitFor(() => expect(chunks).toHaveLength(1));
    chunks[0].tell(row(0));
    runs.run('sites', sampleHead, {});
    await vi.waitFor(() => expect(runs.store.getState().records.sweep?.state).toBe('stopped'));
    expect(runs.store.getState().records.sweep?.text).toBe('1 rows\n');
    await vi.waitFor(() => expect(chunks).toHaveLength(2));
    runs.stop();
    await vi.waitFor(() => expect(runs.store.getState().records.sites?.state).toBe('stopped'));
  });

  it('waits between rows while the bench needs the machine', async () => {
    const { connect, chunks } = crew(9);
    const runs = createStudyRuns(connect, 1);
    runs.run('sweep', sampleHead, {});
    await vi.waitFor(() => expect(chunks).toHaveLength(1));
    runs.allow(false);
    chunks[0].finish();
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(chunks).toHaveLength(1);
    runs.allow(true);
    await vi.waitFor(() => expect(chunks).toHaveLength(2));
    runs.stop();
  });

  it('says when a worker was lost, and keeps the rows', async () => {
    const { connect, chunks, losers } = crew(9);
    const runs = createStudyRuns(connect, 1);
    runs.run('sweep', sampleHead, {});
    await vi.waitFor(() => expect(chunks).toHaveLength(1));
    chunks[0].tell(row(0));
    losers.at(-1)?.('out of memory');
    await vi.waitFor(() => expect(runs.store.getState().records.sweep?.state).toBe('refused'));
    expect(runs.store.getState().records.sweep?.fault?.code).toBe('WORKER_LOST');
    expect(runs.store.getState().records.sweep?.rows).toHaveLength(1);
  });
});
