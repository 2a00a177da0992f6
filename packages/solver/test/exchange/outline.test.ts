import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/exchange/outline.ts';
import { takeOutline } from '../../src/exchange/take-outline.ts';
import { area } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import type { Shape } from '../../src/geometry/shape.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { faultOf } from '../model/fault-of.ts';
import { twoByTwo } from '../model/two-by-two.ts';
import { arc, box, circle, dxf, light, line } from './dxf-texts.ts';

const shapes = (text: string, options = {}) => readDrawing(text, options).read.shapes.map(({ shape }) => shape);
const areaOf = (shape: Shape) => area([shapeRing(shape, { chord: 1e-4 })]);

describe('a DXF', () => {
  it('gives rectangles, circles and polygons, the largest first', () => {
    const text = dxf(
      [
        ...circle(1, 2, 3),
        ...box(-20, -10, 20, 10),
        ...light([
          [0, 0],
          [4, 0],
          [0, 5],
        ]),
      ],
      { units: 4 },
    );
    expect(shapes(text)).toEqual([
      { rectangle: [40, 20], centre: [0, 0] },
      { circle: 6, centre: [1, 2] },
      {
        polygon: [
          [0, 0],
          [4, 0],
          [0, 5],
        ],
      },
    ]);
  });

  it('joins lines and arcs in any order and sense to a rounded rectangle', () => {
    const text = dxf([
      ...[...line(-8, -5, 8, -5), ...line(10, 3, 10, -3), ...line(-8, 5, 8, 5), ...line(-10, -3, -10, 3)],
      ...[...arc(8, 3, 2, 0, 90), ...arc(-8, 3, 2, 90, 180), ...arc(-8, -3, 2, 180, 270), ...arc(8, -3, 2, 270, 360)],
    ]);
    expect(shapes(text)).toEqual([{ rectangle: [20, 10], centre: [0, 0], corner: 2 }]);
  });

  it('reads bulges above 1: three quarters of a circle, by the area of circle and square', () => {
    // From (1, 0) round to (0, -1) the long way, then to the centre: bulge tan(270 deg / 4).
    const [shape] = shapes(
      dxf(
        light([
          [1, 0, Math.tan((3 * Math.PI) / 8)],
          [0, -1],
          [0, 0],
        ]),
      ),
      { tolerance: 1e-5 },
    );
    expect(areaOf(shape)).toBeCloseTo((3 / 4) * Math.PI, 3);
    const { extents } = readDrawing(
      dxf(
        light([
          [1, 0, Math.tan((3 * Math.PI) / 8)],
          [0, -1],
          [0, 0],
        ]),
      ),
    ).preview;
    expect(extents!.min[0]).toBeCloseTo(-1, 2);
    expect(extents!.max[1]).toBeCloseTo(1, 2);
  });

  it('closes two half circles to one circle, whichever way they bulge', () => {
    expect(shapes(dxf([...arc(2, 1, 4, 30, 210), ...arc(2, 1, 4, 210, 30)]))).toEqual([{ circle: 8, centre: [2, 1] }]);
    expect(
      shapes(
        dxf(
          light([
            [-2, 1, -1],
            [6, 1, -1],
          ]),
        ),
      ),
    ).toEqual([{ circle: 8, centre: [2, 1] }]);
  });

  it.each([
    [1, 25.4],
    [4, 1],
    [9, 0.0254],
    [13, 1e-3],
    [6, 1000],
  ])('reads the unit of code %d in its header', (code, mm) => {
    expect(shapes(dxf(circle(0, 0, 10 / mm), { units: code }))).toEqual([{ circle: 20, centre: [0, 0] }]);
  });

  it('says when it has to guess the unit, and lets the caller say', () => {
    const text = dxf(circle(0, 0, 1));
    expect(readDrawing(text).preview).toMatchObject({ units: { length: 'mm', basis: 'guessed' } });
    expect(readDrawing(text).preview.guesses.join()).toMatch(/no unit/);
    expect(shapes(text, { units: 'inch' })).toEqual([{ circle: 50.8, centre: [0, 0] }]);
    expect(readDrawing(dxf(circle(0, 0, 1), { units: 4 }), { units: 'inch' }).preview.guesses.join()).toMatch(
      /header says mm, but inch was asked for/,
    );
    expect(faultOf(() => readDrawing(text, { units: 'furlong' }))).toMatchObject({ code: 'USAGE' });
  });

  it('places blocks within blocks, turned, scaled, mirrored and repeated', () => {
    const blocks = [
      ...[0, 'BLOCK', 2, 'hole', 10, 1, 20, 0, ...circle(1, 0, 0.5, '0'), 0, 'ENDBLK'],
      ...[0, 'BLOCK', 2, 'PAIR', 10, 0, 20, 0, 0, 'INSERT', 8, '0', 2, 'HOLE', 10, 3, 20, 0, 70, 2, 44, 4, 0, 'ENDBLK'],
    ];
    const insert = [0, 'INSERT', 8, 'DRILL', 2, 'pair', 10, 10, 20, 5, 41, -2, 42, 2, 50, 90];
    const { read, preview } = readDrawing(dxf(insert, { units: 4, blocks }));
    // Pair at x = 3 and 7, mirrored and doubled to -6 and -14, turned by 90 deg to below (10, 5).
    expect(read.shapes.map(({ shape, layer }) => [shape, layer])).toEqual([
      [{ circle: 2, centre: [10, -1] }, 'DRILL'],
      [{ circle: 2, centre: [10, -9] }, 'DRILL'],
    ]);
    expect(preview.dropped).toEqual([]);
  });

  it('makes an ellipse of a circle that is scaled unevenly: area pi a b', () => {
    const blocks = [0, 'BLOCK', 2, 'C', 10, 0, 20, 0, ...circle(0, 0, 1), 0, 'ENDBLK'];
    const [shape] = shapes(dxf([0, 'INSERT', 8, 'L', 2, 'C', 41, 6, 42, 2], { blocks }), { tolerance: 1e-4 });
    expect(areaOf(shape) / (12 * Math.PI)).toBeCloseTo(1, 3);
    const [drawn] = shapes(dxf([0, 'ELLIPSE', 8, 'L', 10, 0, 20, 0, 11, 0, 21, 6, 40, 1 / 3]), { tolerance: 1e-4 });
    expect(areaOf(drawn) / (12 * Math.PI)).toBeCloseTo(1, 3);
  });

  it('flattens splines to the tolerance: a rational one that is a circle', () => {
    // Nine control points of the unit circle, weights 1 and cos 45 deg (Piegl and Tiller 1997, example 7.2).
    const w = Math.SQRT1_2;
    const points = [
      [1, 0],
      [1, 1],
      [0, 1],
      [-1, 1],
      [-1, 0],
      [-1, -1],
      [0, -1],
      [1, -1],
      [1, 0],
    ];
    const knots = [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4];
    const spline = [
      ...[0, 'SPLINE', 8, 'L', 70, 4, 71, 2, ...knots.flatMap((knot) => [40, knot])],
      ...[
        ...points.flatMap((_, i) => [41, i % 2 === 0 ? 1 : w]),
        ...points.flatMap(([x, y]) => [10, 10 * x, 20, 10 * y]),
      ],
    ];
    for (const tolerance of [1e-2, 1e-4]) {
      const [shape] = shapes(dxf(spline), { tolerance });
      const corners = 'polygon' in shape ? shape.polygon : [];
      for (const [x, y] of corners) expect(Math.hypot(x, y)).toBeCloseTo(10, 7);
      corners.forEach(([x, y], i) => {
        const [u, v] = corners[(i + 1) % corners.length];
        expect(10 - Math.hypot((x + u) / 2, (y + v) / 2)).toBeLessThan(1.01 * tolerance);
      });
    }
  });

  it('reads the layers asked for and lists all', () => {
    const text = dxf([...circle(0, 0, 9, 'A'), ...circle(0, 0, 2, 'B'), ...line(0, 0, 1, 0, 'B')]);
    const { read, preview } = readDrawing(text, { layers: ['a'] });
    expect(read.shapes).toHaveLength(1);
    expect(preview.layers).toEqual([
      { name: 'A', entities: { circle: 1 } },
      { name: 'B', entities: { circle: 1, line: 1 } },
    ]);
    expect(faultOf(() => readDrawing(text, { layers: ['C'] }))).toMatchObject({ code: 'USAGE' });
  });

  it('closes gaps up to the limit and says where; names those above', () => {
    const open = (gap: number) =>
      dxf([
        ...light(
          [
            [0, 0],
            [10, 0],
            [10, 10],
            [0, 10],
            [0, gap],
          ],
          false,
        ),
      ]);
    const healed = readDrawing(open(0.005));
    expect(healed.read.shapes[0].area).toBeCloseTo(100, 1);
    expect(healed.preview.guesses.join()).toMatch(/gap of 0.005 mm at \(0, 0.005\) was closed/);
    const fault = faultOf(() => readDrawing(open(0.4)));
    expect(fault.message).toMatch(
      /line 6.*not closed: it ends at \(0, 0.?4?\) and .* 0\.4 mm apart; close it, or allow gaps up to 0\.4/,
    );
    expect(readDrawing(open(0.4), { gap: 0.5 }).read.shapes).toHaveLength(1);
  });

  const sound = box(-50, -50, 50, 50);
  it.each([
    [
      'an arc of no length',
      arc(0, 0, 5, 90, 90),
      /ARC .* has no length: it ends at the angle where it starts; draw a circle/,
    ],
    ['a line of no length', line(1, 1, 1, 1), /LINE .* has no length; remove it/],
    ['a circle of radius 0', circle(0, 0, 0), /radius of 0/],
    [
      'an open polyline',
      light(
        [
          [0, 0],
          [5, 0],
          [5, 5],
        ],
        false,
      ),
      /is not closed: it ends at \((0, 0|5, 5)\).*7\.07 mm apart/,
    ],
    [
      'a polyline that crosses itself',
      light([
        [0, 0],
        [9, 9],
        [9, 0],
        [0, 9],
      ]),
      /is none: .*cross/,
    ],
    ['a polyline with one vertex', light([[3, 3]]), /fewer than two different vertices/],
    ['a circle drawn twice', [...circle(3, 3, 1), ...circle(3, 3, 1)], /is the same as that on line/],
    [
      'words as coordinates',
      [0, 'LINE', 8, 'L', 10, 'abc', 20, 0, 11, 1, 21, 1],
      /has "abc" on line \d+ where code 10 needs a number/,
    ],
    [
      'gigantic coordinates',
      circle(4e6, 5e6, 10),
      /beyond 100000 mm from the origin; check the unit, or move its middle/,
    ],
    [
      'a block that is not there',
      [0, 'INSERT', 8, 'L', 2, 'GONE'],
      /places the block "GONE", which the drawing does not hold/,
    ],
    ['a hatch', [0, 'HATCH', 8, 'L', 2, 'SOLID'], /HATCH .* is no outline; draw it/],
    ['paper space', [...[0, 'CIRCLE', 8, 'L', 67, 1, 10, 0, 20, 0, 40, 5]], /paper space/],
    ['another plane', [0, 'CIRCLE', 8, 'L', 10, 0, 20, 0, 40, 5, 210, 1, 220, 0, 230, 0], /not drawn in the x-y plane/],
    [
      'a spline without control points',
      [0, 'SPLINE', 8, 'L', 71, 3, 11, 0, 21, 0, 11, 1, 21, 1],
      /points it passes through only/,
    ],
    ['a spline whose knots do not fit', [0, 'SPLINE', 8, 'L', 71, 3, 40, 0, 10, 0, 20, 0, 10, 1, 20, 1], /do not fit/],
    [
      'a polyline in space',
      [0, 'POLYLINE', 8, 'L', 70, 8, 0, 'VERTEX', 10, 0, 20, 0, 0, 'SEQEND'],
      /in space or a mesh/,
    ],
    ['a speck', circle(0, 0, 1e-5), /too small to count/],
  ])('leaves out %s by line, with a reason and a remedy, and reads the rest', (_, entities, reason) => {
    const { read, preview } = readDrawing(dxf([...sound, ...entities], { units: 4 }));
    expect(preview.dropped).toHaveLength(1);
    expect(preview.dropped[0].reason).toMatch(reason);
    expect(preview.dropped[0].line).toBeGreaterThan(sound.length);
    expect(read.shapes.map(({ shape }) => shape)).toContainEqual({ rectangle: [100, 100], centre: [0, 0] });
  });

  it('moves gigantic coordinates to the origin when asked', () => {
    expect(shapes(dxf(circle(4e6, 5e6, 10), { units: 4 }), { centre: [0, 0] })).toEqual([
      { circle: 20, centre: [0, 0] },
    ]);
  });

  it('refuses a block within itself, and a drawing that breaks off', () => {
    const blocks = [0, 'BLOCK', 2, 'A', 0, 'INSERT', 8, 'L', 2, 'A', 0, 'ENDBLK'];
    expect(faultOf(() => readDrawing(dxf([0, 'INSERT', 8, 'L', 2, 'A'], { blocks }))).message).toMatch(
      /"A" within itself/,
    );
    expect(faultOf(() => readDrawing('0\nSECTION\n2\nENTITIES\n0\nLINE\nnonsense\n5'))).toMatchObject({
      code: 'UNREADABLE',
      details: { line: 7 },
    });
    expect(faultOf(() => readDrawing('hello'))).toMatchObject({ code: 'UNREADABLE' });
    expect(faultOf(() => readDrawing(''))).toMatchObject({ code: 'UNREADABLE' });
  });
});

describe('an SVG', () => {
  const svg = (body: string, attributes = 'width="100mm" height="50mm" viewBox="0 0 200 100"') =>
    `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;

  it('reads shapes and paths in mm, y up, with all transforms', () => {
    const text = svg(
      '<g id="body" transform="translate(20 10) scale(2)"><rect x="1" y="2" width="40" height="20" rx="3"/></g>' +
        '<circle cx="100" cy="50" r="10"/><path d="M10 10h20v20h-20z"/>',
    );
    expect(shapes(text)).toEqual([
      { rectangle: [40, 20], centre: [31, 33], corner: 3 },
      { rectangle: [10, 10], centre: [10, 40] },
      { circle: 10, centre: [50, 25] },
    ]);
    expect(readDrawing(text).preview.layers.map(({ name }) => name)).toEqual(['body', '0']);
    expect(readDrawing(text).preview.units).toEqual({ length: 'mm', basis: 'file' });
  });

  it('keeps circular arcs, and flattens curves and ellipses to the tolerance', () => {
    const disc = '<path d="M90 50a10 10 0 0 1 20 0a10 10 0 0 1-20 0z"/>';
    expect(shapes(svg(disc))).toEqual([{ circle: 10, centre: [50, 25] }]);
    const [ellipse] = shapes(svg('<ellipse cx="100" cy="50" rx="40" ry="10" transform="rotate(30 100 50)"/>'), {
      tolerance: 1e-4,
    });
    expect(areaOf(ellipse) / (100 * Math.PI)).toBeCloseTo(1, 4);
    // Under y = 1 - x^2 from -1 to 1 lies 4/3; a quadratic from (-1, 0) over (0, 2) to (1, 0) is that parabola.
    const [parabola] = shapes(svg('<path d="M-1 0Q0 2 1 0z"/>', ''), { tolerance: 1e-5, units: 'mm' });
    expect(areaOf(parabola)).toBeCloseTo(4 / 3, 4);
  });

  it('takes bare numbers as pixels, 96 to the inch, and says so', () => {
    const { read, preview } = readDrawing(svg('<circle r="96"/>', ''));
    expect(read.shapes[0].shape).toEqual({ circle: 50.8, centre: [0, 0] });
    expect(preview).toMatchObject({ units: { length: 'px', basis: 'guessed' } });
    expect(preview.guesses.join()).toMatch(/1\/96 inch/);
  });

  it.each([
    ['a clone', '<use href="#a"/>', /<use> .* is of a kind that is not read/],
    ['what is not shown', '<circle r="3" style="display:none"/>', /is not displayed/],
    ['broken path data', '<path d="M0 0 L 5 x"/>', /path data that break off/],
    ['a transform that is none', '<circle r="3" transform="turn(3)"/>', /has the transform "turn\(3\)"/],
    ['an open path', '<path d="M0 0h10v10"/>', /is not closed/],
    ['a flat rectangle', '<rect width="5" height="0"/>', /has no size/],
  ])('leaves out %s by line', (_, element, reason) => {
    const { preview } = readDrawing(svg(`<circle cx="50" cy="50" r="40"/>\n${element}`));
    expect(preview.dropped).toEqual([{ line: 2, reason: expect.stringMatching(reason) }]);
  });

  it('is refused when it is no sound XML, with the line', () => {
    expect(faultOf(() => readDrawing('<svg>\n<g></svg>'))).toMatchObject({ code: 'UNREADABLE', details: { line: 2 } });
    expect(faultOf(() => readDrawing('<html></html>'))).toMatchObject({ code: 'UNREADABLE' });
  });
});

describe('a drawing in a head', () => {
  it('is outline and openings by what lies in what, and tells what it leaves', () => {
    const text = dxf([...box(-26, -23, 26, 23, '0'), ...circle(0, 0, 1, '0'), ...circle(90, 0, 2, '0')], { units: 4 });
    const { model, notes } = takeOutline(twoByTwo, readDrawing(text).read, 'auto');
    expect(checkHeadModel(model).body).toMatchObject({
      outline: { rectangle: [52, 46], centre: [0, 0] },
      openings: [{ circle: 2, centre: [0, 0] }],
    });
    expect(notes).toEqual(['Not taken: 1 shapes on "0".']);
  });

  it('is keep-outs with the words in them as names, and the clearance of one before', () => {
    const text = dxf([
      ...box(-4, 15, 4, 21, 'K'),
      0,
      'TEXT',
      8,
      'K',
      10,
      0,
      20,
      18,
      1,
      'connector',
      ...circle(20, 0, 1, 'K'),
    ]);
    const base = { ...twoByTwo, keepOuts: [{ name: 'connector', shape: { circle: 1 }, clearance: 0.7 }] };
    const { model } = takeOutline(base, readDrawing(text).read, 'keep-outs');
    expect(model.keepOuts).toEqual([
      { name: 'connector', shape: { rectangle: [8, 6], centre: [0, 18] }, clearance: 0.7 },
      { name: 'K 2', shape: { circle: 2, centre: [20, 0] } },
    ]);
  });
});
