import { widened } from './triangulation.ts';

/** Pieces of segments waiting to be split, last in first out, each once. */
export interface PieceQueue {
  pieces: Int32Array;
  count: number;
  /** `[pieces]` */
  waits: Int32Array;
}

export function pieceQueue(): PieceQueue {
  return { pieces: new Int32Array(256), count: 0, waits: new Int32Array(256) };
}

export function addPiece(queue: PieceQueue, piece: number): void {
  if (piece >= queue.waits.length) queue.waits = widened(queue.waits, new Int32Array(2 * piece));
  if (queue.waits[piece] === 1) return;
  queue.waits[piece] = 1;
  if (queue.count === queue.pieces.length) queue.pieces = widened(queue.pieces, new Int32Array(2 * queue.count));
  queue.pieces[queue.count++] = piece;
}

/** Takes the piece added last, -1 when none waits. */
export function takePiece(queue: PieceQueue): number {
  if (queue.count === 0) return -1;
  const piece = queue.pieces[--queue.count];
  queue.waits[piece] = 0;
  return piece;
}
