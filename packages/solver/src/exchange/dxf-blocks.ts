import { type Affine, after } from './curve.ts';
import { MOST_CURVES, nameOf } from './drawing.ts';
import { BadNumber, type DxfRecord, numberIn, textOf } from './dxf-records.ts';
import type { Dropped } from './reading.ts';

export interface Block {
  readonly base: readonly [number, number];
  readonly entities: readonly DxfRecord[];
}

/** Blocks by their names in capitals. */
export function blocksOf(records: readonly DxfRecord[], dropped: Dropped[]): ReadonlyMap<string, Block> {
  const blocks = new Map<string, Block>();
  const baseOf = (record: DxfRecord): [number, number] => {
    try {
      return [numberIn(record, 10, 0), numberIn(record, 20, 0)];
    } catch (thrown) {
      if (!(thrown instanceof BadNumber)) throw thrown;
      dropped.push({ line: record.line, reason: `the base of a block ${thrown.message}; it is taken as 0, 0` });
      return [0, 0];
    }
  };
  let open: { name: string; base: [number, number]; entities: DxfRecord[] } | null = null;
  for (const record of records) {
    if (record.type === 'BLOCK')
      open = {
        name: nameOf(textOf(record, 2) ?? '').toUpperCase(),
        base: baseOf(record),
        entities: [],
      };
    else if (record.type === 'ENDBLK' && open !== null) {
      blocks.set(open.name, open);
      open = null;
    } else open?.entities.push(record);
  }
  return blocks;
}

/**
 * Where an INSERT puts its block, once for each column and row: from the coordinates of the block to those of the drawing.
 * A text says why it is nowhere.
 */
export function placements(record: DxfRecord, { base }: Block): string | Iterable<Affine> {
  const [x, y, turn] = [10, 20, 50].map((code) => numberIn(record, code, 0));
  const [sx, sy] = [41, 42].map((code) => numberIn(record, code, 1));
  const [columns, rows] = [70, 71].map((code) => Math.max(1, numberIn(record, code, 1)));
  const [dx, dy] = [44, 45].map((code) => numberIn(record, code, 0));
  if (sx === 0 || sy === 0) return 'is scaled to nothing; remove it';
  if (!(columns * rows <= MOST_CURVES)) return `is repeated ${columns * rows} times; use fewer`;
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const toBase: Affine = [1, 0, 0, 1, -base[0], -base[1]];
  return each();

  function* each(): Generator<Affine> {
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++) {
        const [ox, oy] = [column * dx, row * dy];
        yield after([c * sx, s * sx, -s * sy, c * sy, x + c * ox - s * oy, y + s * ox + c * oy], toBase);
      }
  }
}
