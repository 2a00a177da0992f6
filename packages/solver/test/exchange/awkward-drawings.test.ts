import { describe, expect, it } from 'vitest';
import { type DrawingOptions, readDrawing } from '../../src/exchange/outline.ts';
import { area } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import { faultOf } from '../model/fault-of.ts';
import { arc, box, circle, dxf, light, line } from './dxf-texts.ts';

function reading(text: string, options: DrawingOptions = {}) {
  const { read, preview } = readDrawing(text, options);
  return {
    shapes: read.shapes.map(({ shape }) => shape),
    labels: read.labels,
    said: preview.guesses.join(' '),
    dropped: preview.dropped.map(({ reason }) => reason),
    extents: preview.extents!,
    units: preview.units,
  };
}

const field = box(-50, -50, 50, 50);
const FIELD = { rectangle: [100, 100], centre: [0, 0] };
const layers = (states: readonly (readonly [string, number, number])[]) =>
  [0, 'SECTION', 2, 'TABLES', 0, 'TABLE', 2, 'LAYER', 70, states.length]
    .concat(states.flatMap(([name, flags, colour]) => [0, 'LAYER', 2, name, 70, flags, 62, colour]))
    .concat([0, 'ENDTAB', 0, 'ENDSEC', ''])
    .join('\n');

describe('a DXF of the trade', () => {
  it('is not read on layers that are off or frozen, unless they are named', () => {
    const text =
      layers([
        ['L', 0, 7],
        ['OLD', 0, -7],
        ['ICE', 1, 7],
      ]) + dxf([...field, ...circle(0, 0, 3, 'OLD'), ...circle(9, 0, 2, 'ICE')]);
    const { shapes, dropped } = reading(text);
    expect(shapes).toEqual([FIELD]);
    expect(dropped.sort()).toEqual(
      ['ICE', 'OLD'].map((name) => expect.stringContaining(`layer "${name}" is off or frozen`)),
    );
    expect(reading(text, { layers: ['old'] }).shapes).toEqual([{ circle: 6, centre: [0, 0] }]);
  });

  it.each([
    ['what is invisible', [0, 'CIRCLE', 8, 'L', 60, 1, 10, 0, 20, 0, 40, 2], /CIRCLE .* is invisible/],
    [
      'a line that rises',
      [0, 'LINE', 8, 'L', 10, 0, 20, 0, 30, 0, 11, 9, 21, 0, 31, 5],
      /runs from z = 0 to 5; flatten/,
    ],
    ['a dimension', [0, 'DIMENSION', 8, 'L', 2, '*D1'], /DIMENSION .* is no outline; draw it with lines/],
    ['a region', [0, 'REGION', 8, 'L', 1, 'x'], /REGION .* of a kind that is not read; explode/],
    [
      'a bulge that reaches far off',
      light([
        [0, 0, 1e9],
        [1, 0],
      ]),
      /reaches beyond 100000 mm/,
    ],
    [
      'a spline in space',
      [...[0, 'SPLINE', 8, 'L', 71, 1, 40, 0, 40, 0, 40, 1, 40, 1], ...[10, 0, 20, 0, 30, 0, 10, 5, 20, 0, 30, 4]],
      /not lie in one plane/,
    ],
    [
      'a comma in a number',
      [0, 'CIRCLE', 8, 'L', 10, '1,5', 20, 0, 40, 2],
      /"1,5" on line \d+ where code 10 needs a number/,
    ],
  ])('leaves out %s', (_, entities, reason) => {
    const { shapes, dropped } = reading(dxf([...field, ...entities], { units: 4 }));
    expect(shapes).toEqual([FIELD]);
    expect(dropped).toEqual([expect.stringMatching(reason)]);
  });

  it('turns an ellipse seen from below round: the half from 0 to pi lies below its major axis', () => {
    const half = (normal: number) =>
      dxf([
        ...[
          0,
          'ELLIPSE',
          8,
          'L',
          10,
          0,
          20,
          0,
          11,
          10,
          21,
          0,
          40,
          0.5,
          41,
          0,
          42,
          Math.PI,
          210,
          0,
          220,
          0,
          230,
          normal,
        ],
        ...line(-10, 0, 10, 0),
      ]);
    const [above, below] = [reading(half(1)), reading(half(-1))];
    for (const { shapes } of [above, below])
      expect(area([shapeRing(shapes[0], { chord: 0.01 })]) / (Math.PI * 25)).toBeCloseTo(1, 3);
    expect([above.extents.min[1], above.extents.max[1]]).toEqual([expect.closeTo(0, 6), expect.closeTo(5, 2)]);
    expect([below.extents.min[1], below.extents.max[1]]).toEqual([expect.closeTo(-5, 2), expect.closeTo(0, 6)]);
  });

  it('turns arcs seen from below, where x runs the other way', () => {
    const { extents } = reading(
      dxf([...arc(-5, 0, 2, 0, 90), 210, 0, 220, 0, 230, -1, ...line(3, 0, 5, 0), ...line(5, 0, 5, 2)], { units: 4 }),
    );
    expect(extents).toEqual({ min: [3, 0], max: [5, 2] });
  });

  it('mirrors and turns a block with a bulge', () => {
    // Half a disc of radius 2 above (0, 0)-(4, 0) reversed: bulge -1 from left to right rises.
    const blocks = [
      ...[0, 'BLOCK', 2, 'B', 10, 0, 20, 0],
      ...light(
        [
          [0, 0, -1],
          [4, 0],
        ],
        true,
        '0',
      ),
      ...[0, 'ENDBLK'],
    ];
    const at = (more: (string | number)[]) =>
      reading(dxf([0, 'INSERT', 8, 'L', 2, 'B', 10, 0, 20, 0, ...more], { units: 4, blocks })).extents;
    const box = ({ min, max }: ReturnType<typeof at>) => [...min, ...max].map((value) => Number(value.toFixed(2)) + 0);
    expect(box(at([]))).toEqual([0, 0, 4, 2]);
    expect(box(at([41, -1]))).toEqual([-4, 0, 0, 2]);
    expect(box(at([42, -1]))).toEqual([0, -2, 4, 0]);
    expect(box(at([50, 90]))).toEqual([-2, 0, 0, 4]);
    expect(box(at([41, -2, 42, 2, 50, 90]))).toEqual([-4, -8, 0, 0]);
    expect(box(at([41, 2, 42, 1]))).toEqual([0, 0, 8, 2]);
    expect(box(at([230, -1]))).toEqual([-4, 0, 0, 2]);
  });

  it('names a width that polylines have, and a unit that parts are not drawn in', () => {
    const wide = [0, 'LWPOLYLINE', 8, 'L', 70, 1, 43, 2, 10, 0, 20, 0, 10, 9, 20, 0, 10, 9, 20, 5];
    expect(reading(dxf(wide)).said).toMatch(/1 polylines have a width; they are read along their middle/);
    const { said, units } = reading(dxf(field, { units: 7 }));
    expect(said).toMatch(/"7" in the header is no unit that parts are drawn in/);
    expect(units).toEqual({ length: 'mm', basis: 'guessed' });
  });

  it('reads words without the codes that set them, where they stand', () => {
    const text = dxf([
      ...field,
      ...[0, 'MTEXT', 8, 'L', 10, 1, 20, 2, 3, '{\\fSans|b0;Keep\\P', 1, 'out} \\H2.5;%%c3 %%p0.1'],
      ...[0, 'TEXT', 8, 'L', 10, 0, 20, 0, 11, 7, 21, 8, 72, 4, 1, 'in \\U+00B5m'],
    ]);
    expect(reading(text).labels.map((label) => [label.text, label.at])).toEqual([
      ['Keep out \u00d83 \u00b10.1', [1, 2]],
      ['in \u00b5m', [7, 8]],
    ]);
  });

  it.each([
    ['carriage returns only', (text: string) => text.replaceAll('\n', '\r')],
    ['blanks before every line', (text: string) => text.replace(/^/gm, '  ')],
    ['a comment on top', (text: string) => `999\nmade up\n${text}`],
    ['a byte order mark', (text: string) => `\ufeff${text}`],
    [
      'objects of newer releases',
      (text: string) => text.replace(/EOF$/, 'SECTION\n2\nOBJECTS\n0\nDICTIONARY\n0\nENDSEC\n0\nEOF'),
    ],
  ])('is the same with %s', (_, change) => {
    expect(reading(change(dxf(field, { units: 4 }))).shapes).toEqual([FIELD]);
  });
});

describe('an SVG of the trade', () => {
  const svg = (body: string, attributes = 'width="100mm" height="50mm" viewBox="0 0 100 50"') =>
    `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;
  const square = '<rect width="10" height="10"/>';
  const side = (text: string, options = {}) => {
    const [shape] = reading(text, options).shapes;
    return 'rectangle' in shape ? shape.rectangle[0] : NaN;
  };

  it.each([
    ['inches', 'width="2in" height="1in" viewBox="0 0 20 10"', 25.4],
    ['centimetres', 'width="2cm" height="1cm" viewBox="0 0 20 10"', 10],
    ['points', 'width="72pt" height="36pt" viewBox="0 0 20 10"', 12.7],
    ['a width only', 'width="20mm" viewBox="0 0 20 10"', 10],
    ['a height only', 'height="20mm" viewBox="0 0 20 10"', 20],
  ])('has the size that its page has in %s', (_, attributes, mm) => {
    expect(side(svg(square, attributes))).toBeCloseTo(mm, 9);
    expect(reading(svg(square, attributes)).units.basis).toBe('file');
  });

  it('says where the origin is, and that another unit was asked for than its page has', () => {
    const text = svg(square, 'width="200mm" height="100mm" viewBox="0 0 100 50"');
    expect(side(text)).toBe(20);
    expect(side(text, { units: 'mm' })).toBe(10);
    const { said } = reading(text, { units: 'mm' });
    expect(said).toMatch(/makes a unit 2 mm by its size on the page, but mm was asked for/);
    expect(said).toMatch(/origin is the lower left corner/);
  });

  it('is stretched where it says so', () => {
    const text = svg(
      '<rect x="10" y="10" width="10" height="10"/>',
      'width="100mm" height="50mm" viewBox="0 0 100 100" preserveAspectRatio="none"',
    );
    expect(reading(text).shapes).toEqual([{ rectangle: [10, 5], centre: [15, 42.5] }]);
  });

  it('takes lengths with units as pixels, 96 to the inch, before all transforms', () => {
    expect(side(svg('<rect width="1in" height="1in"/>', 'width="1in" height="1in" viewBox="0 0 96 96"'))).toBeCloseTo(
      25.4,
      9,
    );
  });

  it('reads flags of arcs that are written without blanks: (1, 1) to (1.5, 1.5) the long way round', () => {
    const round = reading(svg('<path d="M1 1a1,1 0 11.5.5z"/>'), { tolerance: 1e-5 });
    // Circle of radius 1 through both, less the segment on the chord of sqrt(1/2): angle 2 asin(sqrt(1/2) / 2).
    const angle = 2 * Math.asin(Math.SQRT1_2 / 2);
    const expected = Math.PI - (angle - Math.sin(angle)) / 2;
    expect(area([shapeRing(round.shapes[0], { chord: 1e-4 })])).toBeCloseTo(expected, 3);
  });

  it.each([
    ['a rectangle in per cent', '<rect width="50%" height="10"/>', /has the length "50%"; give it in units/],
    [
      'what its style moves',
      '<rect width="9" height="9" style="transform: translate(3px,0)"/>',
      /is moved by its style/,
    ],
    [
      'a turn with an origin',
      '<rect width="9" height="9" transform="rotate(90)" transform-origin="4 4"/>',
      /with an origin/,
    ],
    ['a hidden group', `<g style="display: none">${square}</g>`, /<g> .* is not displayed/],
    ['what is invisible', '<rect width="9" height="9" visibility="hidden"/>', /is not displayed/],
    ['a drawing within it', `<svg x="9">${square}</svg>`, /<svg> .* is of a kind that is not read/],
    ['a path that breaks off', '<path d="M0 0h9v9h-9z M20 20 h5 q"/>', /path data that break off/],
  ])('leaves out %s', (_, element, reason) => {
    const { shapes, dropped } = reading(svg(`<circle cx="50" cy="25" r="5"/>${element}`));
    expect(shapes).toEqual([{ circle: 10, centre: [50, 25] }]);
    expect(dropped).toEqual([expect.stringMatching(reason)]);
  });

  it('names style sheets that hide, and clips that it does not heed', () => {
    const { said } = reading(
      svg(`<style>.a { display: none }</style><rect width="9" height="9" clip-path="url(#c)"/>`),
    );
    expect(said).toMatch(/style sheet on line 1 has "display: none", which is not heeded/);
    expect(said).toMatch(/1 elements are clipped or masked, such as on line 1; they are read whole/);
  });

  it('finds words by their first piece', () => {
    const { labels } = reading(svg(`${square}<text><tspan x="6" y="8">KEEP</tspan></text>`));
    expect(labels).toEqual([{ text: 'KEEP', at: [6, 42], layer: '0' }]);
  });

  it('is refused where nothing is left, with the reason', () => {
    expect(faultOf(() => readDrawing(svg('<rect width="5em" height="9"/>'))).message).toMatch(/has the length "5em"/);
  });
});
