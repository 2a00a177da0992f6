import { checkHeadModel, type HeadModel } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { examples } from '../../src/app/examples.ts';
import { headLayers } from '../../src/buffers/head-layers.ts';
import { boardHeight, seatHeight } from '../../src/buffers/seat-height.ts';
import { gridMesh } from './grid-mesh.ts';

const model: HeadModel = checkHeadModel({
  flathead: 1,
  name: 'layers',
  body: { outline: { rectangle: [40, 20] }, thickness: 4, material: 'alumina-96' },
  sites: {
    columns: 2,
    rows: 1,
    pitch: [16, 16],
    probes: { count: 100, field: [6, 6], preload: 0.1 },
  },
  frame: {
    outer: { rectangle: [60, 30] },
    window: { rectangle: [32, 12] },
    material: 'stainless-17-4',
    thickness: 3,
    side: 'board',
    join: 'sliding',
    ribs: [{ between: 'columns', width: 4, thickness: 2 }],
  },
  fasteners: [],
  cases: [{ name: 'mounted' }],
  limits: { bow: 0.03 },
});
const mesh = gridMesh(60, 30, 60, 30);
/** mm2 of a layer on a mesh of unit squares. */
const area = ({ triangles }: { triangles: Uint32Array }): number => triangles.length / 2;

describe('headLayers', () => {
  it('covers body, frame and a rib of its own thickness with their triangles, to scale', () => {
    const [body, ...framing] = headLayers(model, mesh);
    const [rib, frame] = framing.sort((a, b) => area(a) - area(b));
    expect([body.part, body.bottom, body.top, area(body)]).toEqual(['body', -2, 2, 40 * 20]);
    expect([frame.part, frame.bottom, frame.top, area(frame)]).toEqual(['frame', -5, -2, 60 * 30 - 32 * 12]);
    expect([rib.part, rib.bottom, rib.top, area(rib)]).toEqual(['frame', -4, -2, 4 * 12]);
  });

  it('leaves openings of the body free', () => {
    const opened = { ...model, body: { ...model.body, openings: [{ rectangle: [4, 4] as [number, number] }] } };
    expect(area(headLayers(opened, mesh)[0])).toBe(40 * 20 - 16);
  });
});

describe('a level frame', () => {
  it('lies half on either face of the body and whole beside it', () => {
    const level = { ...model, frame: { ...model.frame!, side: 'level' as const, ribs: [] } };
    const [body, ...framing] = headLayers(level, mesh);
    expect(area(body)).toBe(40 * 20);
    expect(framing.map((layer) => [layer.bottom, layer.top, area(layer)])).toEqual([
      [2, 3.5, 40 * 20 - 32 * 12],
      [-3.5, -2, 40 * 20 - 32 * 12],
      [-1.5, 1.5, 60 * 30 - 40 * 20],
    ]);
  });
});

describe('seatHeight', () => {
  it('is the uppermost face: body, or frame beside or over it', () => {
    const device = { ...model, frame: { ...model.frame!, side: 'device' as const } };
    expect(seatHeight(model, [0, 0])).toBe(2);
    expect(seatHeight(model, [18, 8])).toBe(2);
    expect(seatHeight(model, [25, 0])).toBe(-2);
    expect(seatHeight(device, [18, 8])).toBe(5);
    expect(seatHeight(device, [0, 0])).toBe(2);
    expect([boardHeight(model), boardHeight(device)]).toEqual([-5, -2]);
  });
});

describe('shipped models', () => {
  it.each(examples)('$label shows the parts it has', ({ model: shipped }) => {
    const layers = headLayers(shipped, gridMesh(56, 37, 112, 74));
    expect(layers[0].part).toBe('body');
    expect(layers.some(({ part }) => part === 'frame')).toBe(shipped.frame !== undefined);
  });
});
