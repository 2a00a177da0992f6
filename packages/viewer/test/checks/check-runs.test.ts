import type { VerificationCase } from '@flathead/solver/verification';
import { describe, expect, it } from 'vitest';
import { createCheckRuns } from '../../src/checks/check-runs.ts';
import { bookRows, checkNumber, shareText, tally } from '../../src/checks/check-text.ts';
import type { ChecksAnswer, ChecksRequest } from '../../src/checks/protocol.ts';

const book = ['plates', 'plates', 'heads'].map(
  (topic, index): VerificationCase => ({
    ...{ index, topic, model: 'm', quantity: 'w', unit: 'mm', expected: 2, tolerance: 0.01 },
    ...{ why: '', source: 's', basis: index === 1 ? 'memory' : 'published' },
  }),
);
const row = (index: number, within: boolean): ChecksAnswer => ({
  kind: 'row',
  row: { ...book[index], values: [2], nodes: [9], order: null, deviation: 0, within },
});

function bench() {
  const workers: {
    asked: ChecksRequest[];
    ended: boolean;
    hear: (a: ChecksAnswer) => void;
    lost: (r: string) => void;
  }[] = [];
  const runs = createCheckRuns((hear, lost) => {
    const worker = { asked: [] as ChecksRequest[], ended: false, hear, lost };
    workers.push(worker);
    hear({ kind: 'book', cases: book });
    return {
      postMessage: (request) => void worker.asked.push(request),
      terminate: () => {
        worker.ended = true;
      },
    };
  });
  return { runs, workers, state: () => runs.store.getState() };
}

describe('runs of the book', () => {
  it('forgets what it runs again, counts, and keeps what another topic gave', () => {
    const { runs, workers, state } = bench();
    runs.open();
    runs.run('heads');
    workers[0].hear(row(2, true));
    workers[0].hear({ kind: 'done' });
    runs.run('plates');
    expect(workers).toHaveLength(1);
    expect(workers[0].asked).toEqual([{ topic: 'heads' }, { topic: 'plates' }]);
    expect([state().running, state().done, state().total]).toEqual(['plates', 0, 2]);
    workers[0].hear(row(0, false));
    expect(tally(book, state().rows)).toBe('2 of 3 run, 1 within their tolerance');
    expect(bookRows(book, state().rows).rows).toEqual([
      ['plates', '1', '1', '0', '0/1'],
      ['heads', '1', '0', '0', '1/1'],
    ]);
    runs.run('heads');
    expect(workers[0].asked).toHaveLength(2);
    workers[0].hear({ kind: 'done' });
    runs.run(null);
    expect([state().running, state().total, state().rows.size]).toEqual(['all', 3, 0]);
  });

  it('stops by ending the worker, keeps what is solved, and starts another for the next run', () => {
    const { runs, workers, state } = bench();
    runs.run(null);
    workers[0].hear(row(0, true));
    runs.stop();
    expect([workers[0].ended, state().running, state().rows.size]).toEqual([true, null, 1]);
    runs.run('plates');
    expect(workers).toHaveLength(2);
    workers[1].lost('killed');
    expect(state().running).toBeNull();
    expect(state().trouble).toContain('killed');
    runs.run('plates');
    expect([workers.length, state().trouble]).toEqual([3, null]);
  });
});

describe('numbers of a check', () => {
  it('tells shares in per cent, and amounts where zero is expected', () => {
    expect(shareText(0.005, book[0])).toBe('0.5 %');
    expect(shareText(-0.00123, book[0])).toBe('\u22120.12 %');
    expect(shareText(1e-9, book[0])).toBe('1e\u22127 %');
    expect(shareText(0.02, { expected: 0, unit: 'q a^2' })).toBe('0.02 q a^2');
    expect(checkNumber(0.00406235)).toBe('0.0040624');
    expect(checkNumber(-4.06e-5)).toBe('\u22124.0600e\u22125');
  });
});
