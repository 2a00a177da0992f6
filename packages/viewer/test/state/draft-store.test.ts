import { expect, it } from 'vitest';
import { fieldName } from '../../src/format/field-help.ts';
import { createDraftStore, firstDraft, hasDrafts, keepDraft } from '../../src/state/draft-store.ts';
import { sampleHead } from './sample-head.ts';

it('tells which field holds a text that is no value, until the model has another', () => {
  const drafts = createDraftStore();
  expect(firstDraft(drafts.getState(), sampleHead)).toBeNull();
  const { thickness } = sampleHead.body;
  keepDraft(drafts, 'body.thickness', { text: '', message: 'Empty', over: thickness, begun: false });
  expect(firstDraft(drafts.getState(), sampleHead)).toBe('body.thickness');
  expect(fieldName('body.thickness')).toBe('Thickness of the body');
  expect(fieldName('body.nothing')).toBe('A field of the recipe');
  const edited = { ...sampleHead, body: { ...sampleHead.body, thickness: thickness + 1 } };
  expect(firstDraft(drafts.getState(), edited)).toBeNull();
  expect(hasDrafts(drafts.getState(), edited)).toBe(false);
});
