import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { graphOf } from '../../src/linear-algebra/graph.ts';
import { minimumDegree } from '../../src/linear-algebra/minimum-degree.ts';
import { order } from '../../src/linear-algebra/order.ts';
import { fill } from './fill.ts';
import { arrow, chain, type Drawing, grid, randomDrawing, randomSystem } from './systems.ts';

const patternOf = ({ n, edges }: Drawing) => randomSystem(n, edges, 1);
const orderOf = (drawing: Drawing) => order(graphOf(patternOf(drawing)), drawing.x, drawing.y);
const isPermutation = (p: Uint32Array) =>
  p
    .slice()
    .sort()
    .every((v, k) => v === k);

/** Minimum degree on the whole graph. */
function degreeOrder(drawing: Drawing): Uint32Array {
  const { start, neighbour } = graphOf(patternOf(drawing));
  const words = (drawing.n + 31) >>> 5;
  const bits = new Uint32Array(drawing.n * words);
  for (let v = 0; v < drawing.n; v++)
    for (let e = start[v]; e < start[v + 1]; e++) bits[v * words + (neighbour[e] >>> 5)] |= 1 << (neighbour[e] & 31);
  const sequence = new Uint32Array(drawing.n);
  minimumDegree(drawing.n, words, bits, sequence);
  return sequence;
}

describe('order', () => {
  it.each([
    ['a single vertex', chain(1)],
    ['a chain', chain(500)],
    ['an arrow', arrow(300)],
    ['a grid', grid(33, 21)],
    ['a complete graph', randomDrawing(80, 8000, 1)],
    ['no edges', randomDrawing(200, 0, 1)],
    ['vertices on one spot', { ...grid(15, 15), x: new Float64Array(225).fill(3), y: new Float64Array(225) }],
    [
      'vertices on two spots',
      { ...grid(15, 15), x: new Float64Array(225).map((_, i) => i % 2), y: new Float64Array(225) },
    ],
    ['coordinates that are huge', { ...grid(15, 15), x: grid(15, 15).x.map((v) => 1e12 * v) }],
    ['coordinates that are tiny', { ...grid(15, 15), y: grid(15, 15).y.map((v) => 1e-12 * v) }],
  ])('orders %s completely', (_, drawing) => {
    const p = orderOf(drawing);
    expect(p.length).toBe(drawing.n);
    expect(isPermutation(p)).toBe(true);
  });

  it('orders random graphs completely', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 0, max: 1500 }),
        fc.integer({ min: 0, max: 1e6 }),
        (n, edges, seed) => isPermutation(orderOf(randomDrawing(n, edges, seed))),
      ),
      { numRuns: 60, seed: 3 },
    );
  });

  it('is deterministic', () => {
    expect(orderOf(grid(40, 30))).toEqual(orderOf(grid(40, 30)));
  });

  it('fills a grid less than minimum degree does, and does less arithmetic', () => {
    // Nested dissection is of optimal order on grids (George 1973; Hoffman, Martin and Rose 1973).
    const drawing = grid(80, 80);
    const graph = graphOf(patternOf(drawing));
    const dissection = fill(graph, orderOf(drawing));
    const degree = fill(graph, degreeOrder(drawing));
    expect(dissection.blocks).toBeLessThan(degree.blocks);
    expect(dissection.work).toBeLessThan(0.85 * degree.work);
  });

  it('grows like n log n in fill and n^1.5 in arithmetic', () => {
    // George 1973. Between 40 and 160 vertices a side n log n is n^1.19; slack for lower terms.
    const [small, large] = [40, 160].map((side) => {
      const drawing = grid(side, side);
      return fill(graphOf(patternOf(drawing)), orderOf(drawing));
    });
    expect(Math.log(large.blocks / small.blocks) / Math.log(16)).toBeLessThan(1.3);
    expect(Math.log(large.work / small.work) / Math.log(16)).toBeLessThan(1.65);
  });

  it('leaves each vertex of a chain two later neighbours at most', () => {
    // Those at the ends of what is eliminated around it, whatever the order (Rose, Tarjan and Lueker 1976).
    const line = chain(1000);
    expect(fill(graphOf(patternOf(line)), orderOf(line)).blocks).toBeLessThan(3 * 1000);
  });
});
