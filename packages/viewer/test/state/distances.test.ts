import { checkHeadModel } from '@flathead/solver';
import { expect, it } from 'vitest';
import { ringGap } from '../../src/buffers/ring-gap.ts';
import { distancesOf } from '../../src/state/distances.ts';
import { sampleHead } from './sample-head.ts';

const head = checkHeadModel({
  ...sampleHead,
  fasteners: [
    { name: 'NW', at: [-25, 15], screw: 'M2.5' },
    { name: 'NE', at: [25, 15], screw: 'M2.5' },
    { name: 'E', at: [25, 8], screw: 'M2.5' },
  ],
  frame: {
    outer: { rectangle: [60, 40] },
    window: { rectangle: [40, 30] },
    material: 'stainless-17-4',
    thickness: 4,
    side: 'board',
    join: 'sliding',
    ribs: [{ from: [1, -16], to: [1, 16], width: 2 }],
  },
  keepOuts: [{ name: 'connector', shape: { rectangle: [10, 6], centre: [18, 15] }, clearance: 0.5 }],
});
const words = (key: string, axes: 'x' | null = null) =>
  distancesOf(head, key, axes).map(({ text, short }) => (short ? `! ${text}` : text));

it('tells a fastener how far sites, edge, keep-out and the next or the mirrored fastener are', () => {
  // Screw head of M2.5: 4.5 across, so from x = 22.75. Site A2 ends at x = 10, y = 9; the keep-out at x = 23.
  // NE stands hypot(25 - 10, 15 - 9) = 16.16 mm from the field, 5 mm inside the frame, and 2 mm from the keep-out.
  expect(words('fastener 1')).toEqual([
    'screw head to field A2 13.9 mm',
    'screw head to the edge of the body 2.8 mm',
    '! screw head 0.3 mm over connector',
    'centre to centre of E 7.0 mm',
  ]);
  expect(words('fastener 1', 'x').at(-1)).toBe('centre to centre of partner NW 50.0 mm');
  expect(words('fastener 2')).toContain('screw head to connector 2.2 mm');
});

it('tells by how much a screw head is over a field or beyond the edge', () => {
  const wide = { ...head, frame: { ...head.frame!, outer: { rectangle: [80, 60] as [number, number] } } };
  const at = (x: number, y: number) =>
    distancesOf({ ...wide, fasteners: [{ name: 'F', at: [x, y], screw: 'M2.5' }] }, 'fastener 0', null).map(
      ({ text, short }) => (short ? `! ${text}` : text),
    );
  // Head 4.5 across: 1.5 mm beside the field that ends at x = 10; 1 mm inside the frame that ends at x = 40.
  expect(at(11.5, 5)[0]).toBe('! screw head 0.8 mm over field A2');
  expect(at(39, 0)[1]).toBe('! screw head 1.3 mm over the edge of the frame');
  // The body ends at x = 30: 1.5 mm within it, and 2.5 and 8 mm beyond.
  expect(at(28.5, 0)[2]).toBe('! screw head 0.8 mm over the rim of the body');
  expect(at(32.5, 0)[2]).toBe('screw head to the rim of the body 0.3 mm');
  expect(at(38, 0).join()).not.toContain('body');
});

it('tells a keep-out which fastener is in its way, and a rib how near the probe fields are', () => {
  expect(words('keepOut 0')).toEqual(['! under fastener NE', '4.2 mm to site A2']);
  // The rib ends at x = 2, the fields of column 2 begin at x = 4.
  expect(words('rib 0')).toEqual(['2.0 mm wide', '2.0 mm to site A2']);
});

it('tells the pitch what is free between the fields', () => {
  expect(words('pitch')).toEqual([
    'free between fields 8.0 mm along x, 6.0 mm along y',
    '11.0 mm to the edge of the body',
  ]);
});

it('measures between outlines, and nothing where they meet', () => {
  const square = (x: number, size: number) =>
    [
      [x, -size],
      [x + 2 * size, -size],
      [x + 2 * size, size],
      [x, size],
    ] as const;
  expect(ringGap(square(0, 1), square(5, 2))).toBeCloseTo(3, 12);
  expect(ringGap(square(0, 1), square(-1, 5))).toBe(0);
  const bar = [
    [-5, -0.1],
    [5, -0.1],
    [5, 0.1],
    [-5, 0.1],
  ] as const;
  expect(ringGap(square(-1, 1), bar)).toBe(0);
});
