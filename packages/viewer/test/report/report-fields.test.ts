import { describe, expect, it } from 'vitest';
import { createFieldStore, fieldsOf, writeField } from '../../src/report/report-fields.ts';

function memory(start: Record<string, string> = {}) {
  const held = { ...start };
  return {
    held,
    getItem: (key: string) => held[key] ?? null,
    setItem: (key: string, value: string) => {
      held[key] = value;
    },
  };
}

describe('fields of a report', () => {
  it('keeps them by head over visits; a new head takes project and author, not who signs, revision and note', () => {
    const storage = memory();
    const store = createFieldStore(storage);
    writeField(store, 'Kestrel', 'project', 'line 2');
    writeField(store, 'Kestrel', 'revision', 'C');
    writeField(store, 'Kestrel', 'approved', 'B');
    writeField(store, '__proto__', 'note', 'odd name');
    const again = createFieldStore(storage).getState();
    expect(fieldsOf(again, 'Kestrel')).toEqual({
      ...{ project: 'line 2', author: '', checked: '', approved: 'B', revision: 'C', note: '' },
    });
    expect(fieldsOf(again, '__proto__').note).toBe('odd name');
    expect(fieldsOf(again, 'Wren')).toEqual({
      ...{ project: 'line 2', author: '', checked: '', approved: '', revision: '', note: '' },
    });
  });

  it('takes whatever the storage holds or refuses', () => {
    for (const bad of ['[1', '7', 'null', '{"Kestrel": {"project": 4}}', '{"Kestrel": null}'])
      expect(fieldsOf(createFieldStore(memory({ 'flathead-report': bad })).getState(), 'Kestrel').project).toBe('');
    const full = {
      getItem: () => null,
      setItem: () => {
        throw new Error('QuotaExceededError');
      },
    };
    const store = createFieldStore(full);
    writeField(store, 'Kestrel', 'author', 'A');
    expect(fieldsOf(store.getState(), 'Kestrel').author).toBe('A');
    expect(fieldsOf(createFieldStore(null).getState(), 'Kestrel').author).toBe('');
  });
});
