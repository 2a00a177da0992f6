import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examples } from '../../src/app/examples.ts';
import { answerKey } from '../../src/state/answer-store.ts';
import { differences } from '../../src/state/difference/differences.ts';
import { chainOf, levelDecimals, waterfall } from '../../src/state/waterfall.ts';

const [baseline, , , both] = examples.map(({ model }) => model);
const changes = differences(baseline, both);
const change = (id: string) => ({ id, words: id, make: (model: typeof baseline) => model });

describe('a waterfall', () => {
  it('leads from one head to the other, one change more each time', () => {
    const chain = chainOf(baseline, both, changes);
    expect(chain.length).toBe(changes.length + 1);
    expect([chain[0], chain.at(-1)]).toEqual([baseline, both]);
    expect(chain.slice(1).map((model, i) => differences(chain[i], model).length)).toEqual(changes.map(() => 1));
    expect(answerKey(changes.at(-1)!.make(chain.at(-2)!))).toBe(answerKey(both));
    expect(chainOf(baseline, baseline, [])).toEqual([baseline]);
  });

  it('adds up exactly, as shown, to the difference of the two levels shown', () => {
    // Most doubles are next to zero; these spread over the levels that heads have.
    const level = fc.integer({ min: 0, max: 500_000 }).map((n) => n / 997);
    fc.assert(
      fc.property(fc.array(fc.option(level), { maxLength: 8 }), level, level, (between, first, last) => {
        const levels = [first, ...between, last];
        const decimals = levelDecimals([first, last]);
        const falls = waterfall(
          levels.slice(1).map((_, i) => change(String(i))),
          levels,
          decimals,
        );
        const shown = (value: number) => Math.round(value * 10 ** decimals);
        expect(falls.reduce((sum, { from, to }) => sum + (to - from), shown(first))).toBe(shown(last));
        expect(falls.slice(1).map(({ from }) => from)).toEqual(falls.slice(0, -1).map(({ to }) => to));
        expect(falls.flatMap((fall) => fall.changes).length).toBe(levels.length - 1);
      }),
      { seed: 11 },
    );
  });

  it('counts a change without an answer with the next', () => {
    const falls = waterfall([change('a'), change('b'), change('c')], [80.12, null, 42.17, 28], 1);
    expect(falls.map(({ changes: of, from, to }) => [of.map(({ id }) => id).join(), from, to])).toEqual([
      ['a,b', 801, 422],
      ['c', 422, 280],
    ]);
  });

  it.each([
    [[128.4, 30], 0],
    [[80.1, 28], 1],
    [[6.28], 2],
    [[0.05, 0.01], 3],
    [[1500], 0],
  ])('shows %j with %i decimals', (levels, decimals) => {
    expect(levelDecimals(levels)).toBe(decimals);
  });
});
