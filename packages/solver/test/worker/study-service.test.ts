import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  applyPlacement,
  type OrFault,
  readHeadModel,
  type StudyOrder,
  type SweepSummary,
  sweepSteps,
} from '../../src/index.ts';
import { studyService } from '../../src/worker/study-service.ts';

const model = readHeadModel(readFileSync(new URL('../../../../models/kestrel-both.json', import.meta.url), 'utf8'));
const plan = { vary: [{ path: 'body.thickness', values: [4.25, 4.5] }] };
const order: StudyOrder<'sweep'> = { study: 'sweep', model, plan };

function good<T>(answer: OrFault<T>): T {
  if (!answer.ok) throw new Error(answer.fault.message);
  return answer.value;
}

describe('study service', () => {
  it('makes the rows, the summary and the text of the study itself, whatever the order', async () => {
    const steps = sweepSteps(model, plan);
    const rows = [steps.next().value, steps.next().value];
    const summary = steps.next().value;
    expect(good(await studyService.prepare(order))).toBe(2);
    const told: unknown[] = [];
    const later = good(await studyService.rows(order, [1], (row) => told.push(row)));
    const sooner = good(await studyService.rows(order, [0], (row) => told.push(row)));
    expect(told).toEqual([rows[1], rows[0]]);
    const end = good(await studyService.summarise(order, [...sooner, ...later], true));
    expect(end.summary).toEqual(summary);
    expect((end.summary as SweepSummary).crossings).toHaveLength(1);
    const lines = end.text.trim().split('\n');
    expect(lines.slice(1, 3)).toEqual(rows.map((row) => JSON.stringify(row)));
    expect(JSON.parse(lines[3])).toEqual({ summary });
  });

  it('says of a part what it says, without what would be solved for and without a summary in the text', async () => {
    const rows = good(await studyService.rows(order, [0], () => {}));
    const end = good(await studyService.summarise(order, rows, false));
    expect(end.summary).toMatchObject({ outcomes: { fail: 1, pass: 0 }, crossings: [] });
    expect(end.text.trim().split('\n')).toHaveLength(2);
  });

  it('opens the head of a row', async () => {
    const rows = good(await studyService.rows(order, [0], () => {}));
    expect(good(await studyService.variant(order, rows[0])).body.thickness).toBe(4.25);
  });

  it('places fasteners and gives the text of the command line', async () => {
    const told: { readonly index: number }[] = [];
    const end = good(
      await studyService.place({ study: 'placement', model, plan: { count: 4, mirror: 'both', step: 12 } }, (row) =>
        told.push(row),
      ),
    );
    expect(told.map(({ index }) => index)).toEqual(told.map((_, i) => i));
    expect(applyPlacement(model, end.summary!.best.placement).fasteners).toHaveLength(4);
    expect(JSON.parse(end.text.trim().split('\n').at(-1)!)).toEqual({ kind: 'summary', ...end.summary });
  });

  it('answers a plan that makes no sense with its fault', async () => {
    const answer = await studyService.prepare({ ...order, plan: { vary: [{ path: 'body.thicknes', values: [4] }] } });
    expect(answer).toMatchObject({ ok: false, fault: { code: 'SCHEMA' } });
  });
});
