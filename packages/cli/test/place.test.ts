import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stiff } from './heads.ts';
import { runHere } from './run-here.ts';

const input = JSON.stringify(stiff);

describe('flathead place', () => {
  it('prints the fasteners as placed, both numbers, and how they were found', async () => {
    const { code, out, err } = await runHere(['place', '-', '--mirror', 'x', '--step', '3'], { input });
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(out).toMatch(/^One site {2}3 fasteners placed\n/);
    expect(out).toMatch(/^ {2}NW +-\d+\.00, -?\d+\.00$/m);
    expect(out).toMatch(/^PASS {2}Site A1 bows/m);
    expect(out).toMatch(/Solved in full: bow [\d.]+ \+- [\d.]+ um/);
    expect(out).toMatch(/In the search: {2}bow [\d.]+ um/);
    expect(out).toMatch(/Note: Best of all \d+ placements on a grid of 3 mm/);
  });

  it('prints JSON Lines, the same bytes for the same seed, and a curve', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'place-'));
    try {
      const file = join(folder, 'head.json');
      const written = ['place', '-', '--step', '3', '--curve', 'count', '--seed', '4', '--json', '--write', file];
      const [one, two] = [await runHere(written, { input }), await runHere(written, { input })];
      expect(one.out).toBe(two.out);
      const lines = one.out
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line));
      expect(lines[0]).toMatchObject({ index: 0, kind: 'begin', total: 7 });
      expect(lines.filter(({ kind }) => kind === 'point').map(({ at }) => at)).toEqual([3, 4, 5, 6, 7, 8]);
      const summary = lines.at(-1);
      expect(summary).toMatchObject({ kind: 'summary', objective: 'bow', verified: { outcome: 'pass' } });
      const variant = JSON.parse(await readFile(file, 'utf8'));
      expect(variant.fasteners.map(({ at }: { at: number[] }) => at)).toEqual(
        summary.best.placement.map(({ at }: { at: number[] }) => at),
      );
      expect((await runHere(['check', '-'], { input: JSON.stringify(variant) })).code).toBe(0);
    } finally {
      await rm(folder, { recursive: true });
    }
  });

  it.each([
    [['--count', 'many'], 'USAGE', /is no number/],
    [['--mirror', 'z'], 'USAGE', /Give x, y or both/],
    [['--count', '2.5'], 'SCHEMA', /count/],
    [['--clearance', '90'], 'OUTSIDE', /No position of a grid/],
  ])('refuses %j', async (options, code, message) => {
    const ended = await runHere(['place', '-', '--json', ...options], { input });
    expect(ended.code).toBe(2);
    const fault = JSON.parse(ended.out);
    expect(fault.code).toBe(code);
    expect(fault.message).toMatch(message);
  });
});
