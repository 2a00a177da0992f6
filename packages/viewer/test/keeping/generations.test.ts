import { describe, expect, it } from 'vitest';
import { findWorkbook, generationOf, leaveBehind, setAside, slotOf } from '../../src/keeping/generations.ts';
import { addRecent, recentFiles, recentOf } from '../../src/keeping/recent.ts';
import { benchModel, type Workbook, workbookOf } from '../../src/state/workbook.ts';
import { sampleHead } from '../state/sample-head.ts';
import { memoryLeaving, memoryStorage } from './memory-storage.ts';

const book = (name: string): Workbook => workbookOf([{ ...sampleHead, name }]);
const nameOf = (found: { readonly book: Workbook | null }) =>
  found.book === null ? null : benchModel(found.book).name;

function stored(...generations: readonly (readonly [name: string, counter: number, at: number])[]) {
  return memoryStorage(
    Object.fromEntries(
      generations.map(([name, counter, at]) => [slotOf(counter), generationOf(book(name), counter, at)]),
    ),
  );
}

describe('generations of a workbook', () => {
  it('are ordered by their counter, not by a clock that was set back', async () => {
    const found = await findWorkbook(stored(['older', 7, 5000], ['newer', 8, 10]), null);
    expect([nameOf(found), found.counter, found.next]).toEqual(['newer', 8, 9]);
    expect(slotOf(9)).toBe(slotOf(7));
  });

  it('fall back to the older one when the write of the newer was cut, and write in the place of the cut one', async () => {
    const storage = stored(['older', 7, 0], ['newer', 8, 1]);
    const whole = generationOf(book('newer'), 8, 1);
    storage.held.set(slotOf(8), { ...whole, text: whole.text.slice(0, 200) });
    const found = await findWorkbook(storage, null);
    expect(nameOf(found)).toBe('older');
    expect(found.unread).toMatchObject([{ key: slotOf(8), fault: { code: 'NOT_JSON' } }]);
    expect(slotOf(found.next)).toBe(slotOf(8));
    expect(found.next).toBeGreaterThan(8);

    await setAside(storage, found.unread[0]);
    await setAside(storage, found.unread[0]);
    expect(storage.held.get('flathead-aside-2')).toEqual({ from: slotOf(8), raw: found.unread[0].raw });
  });

  it.each([
    null,
    'text',
    42,
    [],
    { counter: 'x' },
    { counter: -1, text: 3 },
    { counter: 9, at: 0, text: '{"workbook":1,"variants":[{"flathead":2}]}' },
  ])('survive an entry that is %j', async (entry) => {
    const storage = stored(['good', 6, 0]);
    storage.held.set(slotOf(7), entry);
    const found = await findWorkbook(storage, null);
    expect(nameOf(found)).toBe('good');
    expect(slotOf(found.next)).toBe(slotOf(7));
  });

  it('take what was left as the page was closed when that is newer', async () => {
    const storage = stored(['a', 3, 0], ['b', 4, 0]);
    const leaving = memoryLeaving();
    leaveBehind(leaving, generationOf(book('left'), 5, 0));
    const found = await findWorkbook(storage, leaving);
    expect([nameOf(found), found.next]).toEqual(['left', 6]);
    leaveBehind(leaving, generationOf(book('stale'), 2, 9));
    expect(nameOf(await findWorkbook(storage, leaving))).toBe('b');
    leaving.setItem([...leaving.held.keys()][0], '{"counter": 9, "te');
    expect(nameOf(await findWorkbook(storage, leaving))).toBe('b');
  });

  it('take over the head that an older page kept', async () => {
    const found = await findWorkbook(memoryStorage({ 'flathead-head': { model: sampleHead, at: 5 } }), null);
    expect([nameOf(found), found.at, found.next]).toEqual(['sample', 5, 1]);
    const bad = await findWorkbook(memoryStorage({ 'flathead-head': { model: { flathead: 9 } } }), null);
    expect(bad.book).toBeNull();
  });

  it('take over those of a page that knew no lines, and leave them to it', async () => {
    const old = { 'flathead-workbook-1-odd': generationOf(book('old'), 41, 50) };
    const storage = memoryStorage(old);
    const leaving = memoryLeaving();
    const found = await findWorkbook(storage, leaving);
    expect([nameOf(found), found.at, found.next, found.fromOlder]).toEqual(['old', 50, 1, null]);
    leaving.setItem('flathead-workbook-1-left', JSON.stringify(generationOf(book('left'), 42, 60)));
    expect(nameOf(await findWorkbook(storage, leaving))).toBe('left');

    expect(Object.keys(old)).not.toContain(slotOf(found.next));
    await storage.set(slotOf(found.next), generationOf(book('new'), found.next, 70));
    const again = await findWorkbook(storage, leaving);
    expect([nameOf(again), again.counter, again.fromOlder]).toEqual(['new', 1, null]);
    // That page was opened again, and more was done there.
    await storage.set('flathead-workbook-1-odd', generationOf(book('since'), 43, 80));
    const since = await findWorkbook(storage, leaving);
    expect([nameOf(since), nameOf({ book: since.fromOlder })]).toEqual(['new', 'since']);
  });

  it('leave what a newer page keeps where it is, and tell of it', async () => {
    const newer = { counter: 99, at: 0, text: '{"workbook":3}' };
    const storage = memoryStorage({ 'flathead-workbook-3-even': newer });
    const found = await findWorkbook(storage, null);
    expect([found.book, found.newerVersions]).toEqual([null, [3]]);
    expect([slotOf(found.next), slotOf(found.next + 1)]).not.toContain('flathead-workbook-3-even');
  });
});

describe('recent files', () => {
  it('are kept latest first, once each, no more than twelve, with the hash of the head', async () => {
    const storage = memoryStorage();
    for (let i = 0; i < 15; i++)
      await addRecent(storage, recentOf(`n${i}`, { kind: 'head', model: { ...sampleHead, name: `n${i}` } }, i));
    await addRecent(storage, recentOf('again', { kind: 'head', model: { ...sampleHead, name: 'n9' } }, 99));
    const recent = await recentFiles(storage);
    expect(recent.map(({ name }) => name).slice(0, 3)).toEqual(['again', 'n14', 'n13']);
    expect(recent.length).toBe(12);
    expect(recent.filter(({ name }) => name === 'n9')).toEqual([]);
    expect(recent[0].hash).toMatch(/^[0-9a-f]{12}$/);
  });

  it('survive what is none', async () => {
    expect(await recentFiles(memoryStorage({ 'flathead-recent-1': 'x' }))).toEqual([]);
    expect(await recentFiles(memoryStorage({ 'flathead-recent-1': [null, { kind: 'head' }] }))).toEqual([]);
  });
});
