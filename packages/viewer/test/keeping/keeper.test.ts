import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { findWorkbook } from '../../src/keeping/generations.ts';
import { createKeeper } from '../../src/keeping/keeper.ts';
import { createHeadStore } from '../../src/state/head-store.ts';
import { createHistory } from '../../src/state/history.ts';
import { workbookOf } from '../../src/state/workbook.ts';
import { sampleHead } from '../state/sample-head.ts';
import { memoryLeaving, memoryStorage } from './memory-storage.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

async function page(storage = memoryStorage(), leaving = memoryLeaving()) {
  const found = await findWorkbook(storage, leaving);
  const head = createHeadStore(found.book ?? workbookOf([sampleHead]));
  const keeper = createKeeper(head, storage, leaving, found);
  keeper.setTurn(true);
  const history = createHistory(head);
  return {
    storage,
    leaving,
    head,
    keeper,
    history,
    note: (text: string) => history.edit((model) => ({ ...model, note: text })),
    again: async () => (await findWorkbook(storage, leaving)).book?.variants[0].model.note,
    status: () => keeper.state.getState().status,
  };
}

describe('createKeeper', () => {
  it('keeps the workbook soon after an edit, and says how it stands', async () => {
    const p = await page();
    await p.keeper.flush();
    p.note('1');
    expect(p.status()).toBe('waiting');
    await vi.advanceTimersByTimeAsync(500);
    expect([p.status(), await p.again()]).toEqual(['kept', '1']);
  });

  it('keeps a drag that goes on and on', async () => {
    const p = await page();
    const gesture = p.history.begin();
    for (let i = 0; i < 20; i++) {
      gesture.change((model) => ({ ...model, note: String(i) }));
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(Number(await p.again())).toBeGreaterThanOrEqual(15);
  });

  it('keeps the last of a gesture that the closing of the tab cut', async () => {
    const p = await page();
    await p.keeper.flush();
    const gesture = p.history.begin();
    gesture.change((model) => ({ ...model, note: 'held' }));
    p.keeper.leave();
    expect(await p.again()).toBe('held');
    // What the next visit keeps comes after it.
    const next = await page(p.storage, p.leaving);
    next.note('later');
    await next.keeper.flush();
    expect([await next.again(), p.leaving.held.size]).toEqual(['later', 0]);
  });

  it('says when the storage is full, keeps the work on the page, and tries again at the next edit', async () => {
    const p = await page();
    await p.keeper.flush();
    p.storage.refuse(new DOMException('no room', 'QuotaExceededError'));
    p.note('1');
    await vi.advanceTimersByTimeAsync(500);
    expect(p.keeper.state.getState()).toEqual({ status: 'failed', problem: { kind: 'full', message: 'no room' } });
    expect([p.head.getState().model.note, p.keeper.behind()]).toEqual(['1', true]);
    p.storage.refuse(null);
    p.note('2');
    await vi.advanceTimersByTimeAsync(500);
    expect([p.status(), await p.again()]).toEqual(['kept', '2']);
  });

  it('never writes over the generation before', async () => {
    const p = await page();
    for (const text of ['1', '2', '3']) {
      p.note(text);
      await p.keeper.flush();
      const held = [...p.storage.held.values()].map((entry) => JSON.stringify(entry));
      if (text !== '1') expect(held.some((entry) => entry.includes(`\\"note\\":\\"${Number(text) - 1}\\"`))).toBe(true);
    }
  });

  it('writes nothing while it is the turn of another tab', async () => {
    const p = await page();
    await p.keeper.flush();
    p.keeper.setTurn(false);
    p.note('mine');
    p.keeper.leave();
    await p.keeper.flush();
    await vi.advanceTimersByTimeAsync(5000);
    expect([p.status(), await p.again(), p.keeper.behind()]).toEqual(['elsewhere', undefined, true]);
    p.keeper.setTurn(true);
    await vi.advanceTimersByTimeAsync(500);
    expect(await p.again()).toBe('mine');
  });
});
