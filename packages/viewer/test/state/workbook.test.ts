import type { HeadModel } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { createHeadStore } from '../../src/state/head-store.ts';
import { createHistory } from '../../src/state/history.ts';
import {
  benchModel,
  MOST_VARIANTS,
  referenceOf,
  type Workbook,
  withCopy,
  withModel,
  withoutVariant,
  withVariant,
  withVariantAt,
  workbookOf,
} from '../../src/state/workbook.ts';
import { sampleHead } from './sample-head.ts';

const named = (name: string): HeadModel => ({ ...sampleHead, name });
const names = ({ variants }: Workbook) => variants.map(({ model }) => model.name).join(' ');
const abc = workbookOf([named('a'), named('b'), named('c')], 1);

function bench(start: Workbook = abc) {
  const head = createHeadStore(start);
  return { head, history: createHistory(head), book: () => head.getState().book };
}

describe('a workbook', () => {
  it('takes a variant behind the one on the bench, and copies one under a free name', () => {
    const d = withVariant(abc, named('d'));
    expect([names(d), benchModel(d).name]).toEqual(['a b d c', 'd']);
    const copied = withCopy(withCopy(abc, 'v1'), 'v1');
    expect([names(copied), benchModel(copied).name]).toEqual(['a a 3 a 2 b c', 'a 3']);
    expect(new Set(copied.variants.map(({ id }) => id)).size).toBe(5);
  });

  it('keeps a head on the bench when a variant goes, and keeps the last', () => {
    expect(benchModel(withoutVariant(abc, 'v2')).name).toBe('c');
    expect(benchModel(withoutVariant(abc, 'v1')).name).toBe('b');
    expect(benchModel(withoutVariant(withoutVariant(abc, 'v2'), 'v3')).name).toBe('a');
    const one = workbookOf([sampleHead]);
    expect(withoutVariant(one, 'v1')).toBe(one);
  });

  it('moves a variant to a place on the shelf', () => {
    expect(names(withVariantAt(abc, 'v1', 2))).toBe('b c a');
    expect(names(withVariantAt(abc, 'v3', -1))).toBe('c a b');
    expect(withVariantAt(abc, 'v3', 7)).toBe(abc);
  });

  it('compares copies with the first of their line, and a head of its own with nothing', () => {
    const made = withCopy(withVariant(workbookOf([named('demo')]), named('own')), 'v2');
    const against = (name: string, chosen: string | null = null, book = made) =>
      referenceOf(book, book.variants.find(({ model }) => model.name === name)!, chosen)?.model.name ?? null;
    expect([against('demo'), against('own'), against('own 2')]).toEqual([null, null, 'own']);
    expect([against('demo', 'v3'), against('own 2', 'v3')]).toEqual(['own 2', null]);
    // The line goes on when its first is gone.
    const [, , copy] = made.variants;
    const left = withCopy(withoutVariant(made, 'v2'), copy.id);
    expect(against('own 3', null, left)).toBe('own 2');
  });

  it('holds so many variants and no more', () => {
    let book = abc;
    for (let i = 0; i < MOST_VARIANTS + 5; i++) book = withVariant(book, named(`n${i}`));
    expect(book.variants.length).toBe(MOST_VARIANTS);
  });
});

describe('undo over a workbook', () => {
  it('takes back edits of any variant, and shows the variant it took them back in', () => {
    const { head, history, book } = bench();
    history.edit((model) => ({ ...model, note: 'in b' }));
    history.putOnBench('v1');
    history.edit((model) => ({ ...model, note: 'in a' }));
    history.putOnBench('v3');
    history.undo();
    expect([book().bench, head.getState().model.note]).toEqual(['v1', undefined]);
    history.undo();
    expect([book().bench, head.getState().model.note]).toEqual(['v2', undefined]);
    history.redo();
    expect([book().bench, head.getState().model.note]).toEqual(['v2', 'in b']);
    history.redo();
    expect([book().bench, head.getState().model.note]).toEqual(['v1', 'in a']);
  });

  it('takes back adding, copying, renaming, moving and deleting, each in one step', () => {
    const { head, history, book } = bench();
    const states = [book().variants];
    for (const change of [
      (b: Workbook) => withVariant(b, named('d')),
      (b: Workbook) => withCopy(b, 'v1'),
      (b: Workbook) => withModel(b, 'v3', named('renamed')),
      (b: Workbook) => withVariantAt(b, 'v3', 0),
      (b: Workbook) => withoutVariant(b, 'v2'),
    ]) {
      history.editBook(change);
      expect(book().variants).not.toBe(states.at(-1));
      states.push(book().variants);
    }
    for (const state of states.slice(0, -1).reverse()) {
      history.undo();
      expect(book().variants).toBe(state);
      expect(head.getState().model).toBe(benchModel(book()));
    }
    for (const state of states.slice(1)) {
      history.redo();
      expect(book().variants).toBe(state);
    }
  });

  it('makes no step of putting another variant on the bench, and keeps what can be redone', () => {
    const { head, history, book } = bench();
    history.edit((model) => ({ ...model, note: 'n' }));
    history.undo();
    history.putOnBench('v3');
    expect(head.temporal.getState().pastStates).toEqual([]);
    expect(head.temporal.getState().futureStates.length).toBe(1);
    history.redo();
    expect([book().bench, head.getState().model.note]).toEqual(['v2', 'n']);
  });

  it('ends a gesture when another variant comes on the bench', () => {
    const { history, book } = bench();
    const gesture = history.begin();
    gesture.change((model) => ({ ...model, note: '1' }));
    gesture.change((model) => ({ ...model, note: '2' }));
    history.putOnBench('v1');
    expect(gesture.isOpen()).toBe(false);
    gesture.change((model) => ({ ...model, note: 'late' }));
    expect(book().variants.map(({ model }) => model.note)).toEqual([undefined, '2', undefined]);
    history.undo();
    expect(book().variants).toBe(abc.variants);
  });
});
