import { Fault } from '../fault/fault.ts';
import type { Fastener, HeadModel } from '../model/head-model.ts';
import { unguarded } from './csv-text.ts';
import type { FileContent } from './file-text.ts';
import { type ListOptions, readList } from './points-list.ts';
import { coordinate } from './probe-columns.ts';
import { extentsOf, type Reading, type Taken } from './reading.ts';

/** Fasteners of a table: names and places, screws and heights of seats where it gives them. */
export type FastenerList = readonly Pick<Fastener, 'name' | 'at' | 'screw' | 'height'>[];

/**
 * Fastener table as CSV text or workbook, such as the one written for the board.
 *
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE
 */
export function readFastenerList(content: FileContent, options: ListOptions = {}): Reading<FastenerList> {
  const wanted = [
    { key: 'name', names: ['name', 'fastener', 'id', 'ref'], quantity: null, required: true },
    coordinate('x'),
    coordinate('y'),
    { key: 'screw', names: ['screw', 'size', 'thread'], quantity: null, required: false },
    { key: 'z', names: ['height', 'seatheight', 'z'], quantity: 'length', required: false },
  ] as const;
  const list = readList(content, wanted, ['x', 'y'], options, 'fastener table');
  const dropped = [...list.dropped];
  const seen = new Map<string, number>();
  const fasteners = list.rows.flatMap(({ line, numbers: { x, y, z }, words }) => {
    const name = unguarded(words.name);
    const first = seen.get(name);
    if (name === '' || first !== undefined) {
      dropped.push({ line, reason: name === '' ? 'it has no name' : `"${name}" is on line ${first} already` });
      return [];
    }
    seen.set(name, line);
    const screw = unguarded(words.screw ?? '');
    const at: [number, number] = [x, y];
    return [{ name, at, ...(screw === '' ? {} : { screw }), ...(z === undefined || z === 0 ? {} : { height: z }) }];
  });
  if (fasteners.length === 0)
    throw new Fault(
      'UNREADABLE',
      'The fastener table holds no fastener that can be read. It needs name, x and y.',
      '',
      {
        dropped: dropped.slice(0, 50),
      },
    );
  return {
    read: fasteners,
    preview: {
      counts: { fasteners: fasteners.length, dropped: dropped.length },
      extents: extentsOf(fasteners.map(({ at }) => at)),
      layers: [],
      units: list.units,
      guesses: list.guesses,
      dropped: dropped.sort((a, b) => a.line - b.line),
    },
  };
}

/** Head with the fasteners of a table; those of the same name keep all that the table does not give. */
export function takeFasteners(model: HeadModel, list: FastenerList): Taken<HeadModel> {
  const before = new Map(model.fasteners.map((fastener) => [fastener.name, fastener]));
  const fasteners = list.map((fastener) => ({ ...before.get(fastener.name), ...fastener }));
  const gone = model.fasteners.filter(({ name }) => list.every((fastener) => fastener.name !== name));
  return {
    model: { ...model, fasteners },
    notes: gone.length === 0 ? [] : [`No longer there: ${gone.map(({ name }) => name).join(', ')}.`],
  };
}
