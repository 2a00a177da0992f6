import { Fault } from '../fault/fault.ts';
import { insideRing } from '../geometry/inside.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { Shape } from '../geometry/shape.ts';
import type { HeadModel } from '../model/head-model.ts';
import type { Drawing, DrawnShape } from './outline.ts';
import type { Taken } from './reading.ts';

/** What the shapes of a drawing are taken as; `auto` goes by the names of layers, or else by which lies in which. */
export const OUTLINE_ROLES = ['auto', 'outline', 'openings', 'keep-outs', 'frame'] as const;
export type OutlineRole = (typeof OUTLINE_ROLES)[number];

/** Names of layers, in small letters without marks. */
const LAYERS: Readonly<Record<string, readonly string[]>> = {
  outline: ['outline', 'body', 'bodyoutline', 'headoutline', 'boardoutline'],
  openings: ['openings', 'opening', 'cutouts', 'cutout'],
  frame: ['frame', 'frameouter'],
  window: ['window', 'framewindow'],
  keepOuts: ['keepouts', 'keepout'],
  fasteners: ['fasteners', 'fastener', 'screws'],
};

/**
 * Head with the shapes of a drawing in place of its own: the largest as outline and those in it as openings, all as
 * openings or keep-outs, or the two largest as frame and window.
 *
 * @throws Fault SCHEMA when the drawing lacks what is asked for
 */
export function takeOutline(model: HeadModel, drawing: Drawing, as: OutlineRole): Taken<HeadModel> {
  const { shapes } = drawing;
  switch (as) {
    case 'outline': {
      const { inner, notes } = nested(shapes);
      return { model: withBody(model, shapes[0].shape, inner), notes };
    }
    case 'openings':
      return { model: withBody(model, null, shapes), notes: [] };
    case 'keep-outs':
      return { model: { ...model, keepOuts: keepOutsOf(model, drawing, shapes) }, notes: [] };
    case 'frame': {
      const { inner, notes } = nested(shapes);
      return { model: withFrame(model, shapes[0].shape, inner[0]?.shape), notes: [...notes, ...left(inner.slice(1))] };
    }
    default:
      return byLayer(model, drawing);
  }
}

function byLayer(model: HeadModel, drawing: Drawing): Taken<HeadModel> {
  const roleOf = ({ layer }: DrawnShape) => {
    const name = layer.toLowerCase().replace(/[^\p{L}]/gu, '');
    return Object.keys(LAYERS).find((role) => LAYERS[role].includes(name)) ?? null;
  };
  const of = (role: string) => drawing.shapes.filter((shape) => roleOf(shape) === role);
  if (drawing.shapes.every((shape) => roleOf(shape) === null)) return takeOutline(model, drawing, 'outline');
  const [outlines, openings, frames, windows, keepOuts] = ['outline', 'openings', 'frame', 'window', 'keepOuts'].map(
    of,
  );
  let taken = model;
  if (outlines.length > 0 || openings.length > 0)
    taken = withBody(taken, outlines[0]?.shape ?? null, openings.length > 0 ? openings : null);
  if (frames.length > 0 || windows.length > 0) taken = withFrame(taken, frames[0]?.shape, windows[0]?.shape);
  if (keepOuts.length > 0) taken = { ...taken, keepOuts: keepOutsOf(model, drawing, keepOuts) };
  const moved = withFasteners(taken, drawing, of('fasteners'));
  const spare = drawing.shapes.filter((shape) => roleOf(shape) === null);
  return {
    model: moved.model,
    notes: [...moved.notes, ...left([...spare, ...outlines.slice(1), ...frames.slice(1), ...windows.slice(1)])],
  };
}

function left(shapes: readonly DrawnShape[]): string[] {
  const layers = [...new Set(shapes.map(({ layer }) => `"${layer}"`))];
  return shapes.length === 0 ? [] : [`Not taken: ${shapes.length} shapes on ${layers.join(', ')}.`];
}

/** Shapes within the largest, which comes first. */
function nested([first, ...others]: readonly DrawnShape[]): { inner: DrawnShape[]; notes: string[] } {
  const ring = shapeRing(first.shape, { chord: 0.01 });
  const isInside = ({ shape }: DrawnShape) => {
    const [[x, y]] = shapeRing(shape, { chord: 0.01 });
    return insideRing(ring, x, y);
  };
  const inner = others.filter(isInside);
  return { inner, notes: left(others.filter((shape) => !inner.includes(shape))) };
}

/** As they stand in the file. */
function inOrder(shapes: readonly DrawnShape[]): DrawnShape[] {
  return [...shapes].sort((a, b) => a.line - b.line);
}

function withBody(model: HeadModel, outline: Shape | null, openings: readonly DrawnShape[] | null): HeadModel {
  const { openings: before, ...body } = model.body;
  const cut = openings === null ? before : inOrder(openings).map(({ shape }) => shape);
  return {
    ...model,
    body: {
      ...body,
      outline: outline ?? body.outline,
      ...(cut === undefined || cut.length === 0 ? {} : { openings: cut }),
    },
  };
}

function withFrame(model: HeadModel, outer: Shape | undefined, window: Shape | undefined): HeadModel {
  if (model.frame === undefined)
    throw new Fault(
      'SCHEMA',
      'The drawing has a frame, but the head has none to give these edges to. Give the head a frame with its material and thickness first.',
      'frame',
      { expected: 'a head with a frame' },
    );
  const frame = { ...model.frame, outer: outer ?? model.frame.outer, window: window ?? model.frame.window };
  return { ...model, frame };
}

/** Keep-outs with the word that stands in them as their name; one of that name before keeps its clearance. */
function keepOutsOf(model: HeadModel, { labels }: Drawing, shapes: readonly DrawnShape[]): HeadModel['keepOuts'] {
  const used = new Set<string>();
  return inOrder(shapes).map(({ shape, layer }, i) => {
    const ring = shapeRing(shape, { chord: 0.01 });
    const word = labels.find((label) => label.layer === layer && insideRing(ring, label.at[0], label.at[1]));
    const wanted = word === undefined || word.text === '' ? `${layer} ${i + 1}` : word.text;
    const name = used.has(wanted) ? `${wanted} ${i + 1}` : wanted;
    used.add(name);
    const clearance = model.keepOuts?.find((before) => before.name === name)?.clearance;
    return { name, shape, ...(clearance === undefined ? {} : { clearance }) };
  });
}

/** Fasteners moved to the circles that bear their names. */
function withFasteners(model: HeadModel, { labels }: Drawing, circles: readonly DrawnShape[]): Taken<HeadModel> {
  const notes: string[] = [];
  const places = new Map<string, [number, number]>();
  for (const { shape, line, layer } of circles) {
    if (!('circle' in shape)) continue;
    const at: [number, number] = shape.centre ?? [0, 0];
    const word = labels
      .filter((label) => label.layer === layer && near(label.at, at) <= shape.circle)
      .sort((a, b) => near(a.at, at) - near(b.at, at))[0];
    if (word === undefined)
      notes.push(`The circle on line ${line} of layer "${layer}" bears no name and was not taken.`);
    else places.set(word.text, at);
  }
  const names = model.fasteners.map(({ name }) => name);
  for (const name of places.keys())
    if (!names.includes(name)) notes.push(`The head has no fastener "${name}"; its circle was not taken.`);
  const fasteners = model.fasteners.map((fastener) => ({ ...fastener, at: places.get(fastener.name) ?? fastener.at }));
  return { model: { ...model, fasteners }, notes };
}

function near(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
