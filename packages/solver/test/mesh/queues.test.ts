import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addPiece, pieceQueue, takePiece } from '../../src/mesh/piece-queue.ts';
import { dequeue, enqueue, triangleQueue } from '../../src/mesh/triangle-queue.ts';

/** Steps of a trial: a number to enter and its grade, or `null` to take one out. */
const steps = (most: number) =>
  fc.array(
    fc.option(fc.tuple(fc.integer({ min: 0, max: most }), fc.integer({ min: -1, max: 5 })), { nil: null, freq: 2 }),
    { minLength: 20, maxLength: 300 },
  );

describe('pieces that wait', () => {
  it('come out last in first out, each once, as from a plain list', () => {
    for (const most of [8, 2000])
      fc.assert(
        fc.property(steps(most), (trial) => {
          const queue = pieceQueue();
          const list: number[] = [];
          for (const step of trial) {
            if (step === null) expect(takePiece(queue)).toBe(list.pop() ?? -1);
            else {
              addPiece(queue, step[0]);
              if (!list.includes(step[0])) list.push(step[0]);
            }
          }
          while (list.length > 0) expect(takePiece(queue)).toBe(list.pop());
          expect(takePiece(queue)).toBe(-1);
        }),
        { seed: 31 },
      );
  });

  it('may be more than there was room for at first', () => {
    const queue = pieceQueue();
    for (let p = 0; p < 1000; p++) addPiece(queue, p);
    for (let p = 999; p >= 0; p--) expect(takePiece(queue)).toBe(p);
  });
});

describe('triangles that wait', () => {
  it('come out by grade, first in first out within one, as from plain lists', () => {
    for (const most of [8, 5000])
      fc.assert(
        fc.property(steps(most), (trial) => {
          const queue = triangleQueue(6);
          const lists: number[][] = Array.from({ length: 6 }, () => []);
          const take = () => lists.find((list) => list.length > 0)?.shift() ?? -1;
          for (const step of trial) {
            if (step === null) {
              expect(dequeue(queue)).toBe(take());
              continue;
            }
            const [triangle, grade] = step;
            enqueue(queue, triangle, grade);
            if (grade >= 0 && lists[grade].includes(triangle)) continue;
            for (const list of lists) if (list.includes(triangle)) list.splice(list.indexOf(triangle), 1);
            if (grade >= 0) lists[grade].push(triangle);
          }
          for (let expected = take(); expected >= 0; expected = take()) expect(dequeue(queue)).toBe(expected);
          expect(dequeue(queue)).toBe(-1);
        }),
        { seed: 32 },
      );
  });
});
