import { describe, expect, it } from 'vitest';
import {
  readDrawing,
  readFastenerList,
  readHeightMap,
  readPoints,
  readProbeList,
} from '../../src/exchange/exchange.ts';
import { Fault, type FaultCode } from '../../src/fault/fault.ts';
import { LONGEST_TEXT } from '../../src/plate/read-json.ts';
import { box, circle, dxf, light, line } from './dxf-texts.ts';

/** Seconds of the processor that reading any file may take: under 2 on the machine of docs/performance.md, kept clear for slower and busier ones. */
const SLOWEST = 5;
/** Letters that a reading may have as text, millions. */
const LARGEST = 50;

const readers = {
  probes: (text: string) => readProbeList(text),
  heights: (text: string) => readHeightMap(text),
  fasteners: (text: string) => readFastenerList(text),
  points: (text: string) => readPoints(text),
  drawing: (text: string) => readDrawing(text),
};

const many = (count: number, make: (i: number) => string, between = '\n'): string =>
  Array.from({ length: count }, (_, i) => make(i)).join(between);
/** A text as a reader sees it that takes UTF-16 for UTF-8. */
const widened = (text: string) => `\uFFFD\uFFFD${[...text].map((letter) => `${letter}\0`).join('')}`;
const probes = 'x (mm),y (mm)\n0,0\n1,0\n0,1\n1,1\n';
const svg = (inner: string, attributes = 'width="80mm" height="60mm" viewBox="0 0 80 60"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inner}</svg>`;
const rect = '<rect x="1" y="1" width="40" height="30"/>';

/** Blocks each of which places the one before it ten times. */
function laughs(depth: number, innermost: readonly (string | number)[]): string {
  const place = (name: string) => Array.from({ length: 10 }, () => [0, 'INSERT', 8, 'L', 2, name]).flat();
  const blocks = Array.from({ length: depth }, (_, k) => [
    ...[0, 'BLOCK', 8, '0', 2, `B${k}`, 10, 0, 20, 0],
    ...(k === 0 ? innermost : place(`B${k - 1}`)),
    ...[0, 'ENDBLK'],
  ]).flat();
  return dxf([...box(0, 0, 40, 30), ...place(`B${depth - 1}`)], { blocks });
}
const block = (inner: readonly (string | number)[], base: string | number = 0) => [
  ...[0, 'BLOCK', 8, '0', 2, 'B', 10, base, 20, 0],
  ...inner,
  ...[0, 'ENDBLK'],
];

type Expected = FaultCode | 'read';
type Hostile = readonly [name: string, reader: keyof typeof readers, text: () => string, expected: Expected];

const files: readonly Hostile[] = [
  ['an empty list', 'probes', () => '', 'UNREADABLE'],
  ['a list of line ends', 'probes', () => '\n'.repeat(LONGEST_TEXT), 'UNREADABLE'],
  ['one letter too many', 'probes', () => `${probes}${' '.repeat(LONGEST_TEXT)}`, 'TOO_LARGE'],
  ['five million rows', 'probes', () => `x,y\n${'1,2\n'.repeat(4_900_000)}`, 'TOO_LARGE'],
  ['a line of 10 MB without a mark', 'probes', () => 'x'.repeat(1e7), 'TOO_LARGE'],
  ['a line of 10 MB of commas', 'probes', () => ','.repeat(1e7), 'TOO_LARGE'],
  ['a line of five million cells', 'probes', () => 'x,'.repeat(5e6), 'TOO_LARGE'],
  ['a line of five million numbers', 'heights', () => '1;'.repeat(5e6), 'TOO_LARGE'],
  ['a digit, blanks and a word', 'probes', () => `x,y\n1${' '.repeat(2e5)}a1,2\n${probes.slice(14)}`, 'TOO_LARGE'],
  ['a header of blanks', 'probes', () => `x,y,a${' '.repeat(2e5)}b\n1,2,3\n4,5,6\n`, 'TOO_LARGE'],
  ['a header of brackets over two lines', 'probes', () => `x,y,"${'('.repeat(2e5)}\nb"\n1,2,3\n4,5,6\n`, 'TOO_LARGE'],
  ['a digit, blanks and a word, shorter', 'probes', () => `x,y\n1${' '.repeat(9e3)}a1,2\n${probes.slice(14)}`, 'read'],
  ['a header of blanks, shorter', 'probes', () => `x,y,a${' '.repeat(9e3)}b\n1,2,3\n4,5,6\n`, 'read'],
  ['a quotation that never ends', 'probes', () => `${probes}"${'a\n'.repeat(1e6)}`, 'UNREADABLE'],
  ['a million quotation marks', 'probes', () => `${probes}${'"'.repeat(1_000_001)}`, 'UNREADABLE'],
  ['UTF-16 taken for UTF-8', 'probes', () => widened(probes), 'UNREADABLE'],
  ['NUL bytes among numbers', 'heights', () => 'x,y,z\n0,0,0\n1,\0,0\n', 'UNREADABLE'],
  ['letters of another encoding', 'probes', () => probes.replace('mm', '\uFFFDm'), 'read'],
  ['NaN and Infinity', 'probes', () => `${probes}NaN,1\n1,Infinity\n-Infinity,2\n`, 'read'],
  ['numbers beyond doubles', 'probes', () => `${probes}1e999,1\n${'9'.repeat(400)},2\n`, 'read'],
  ['numbers at the end of doubles', 'heights', () => 'x,y,z\n1e308,0,0\n-1e308,1,0\n0,1e308,0\n', 'read'],
  ['a number of a million digits', 'probes', () => `${probes}${'1'.repeat(1e6)},2\n`, 'TOO_LARGE'],
  ['formulas for cells', 'fasteners', () => 'name,x,y\n=cmd|"/c calc"!A1,0,0\n@SUM(A1),1,1\n', 'read'],
  ['names of prototypes for titles', 'points', () => '__proto__,constructor,x,y\n1,2,3,4\n5,6,7,8\n', 'read'],
  [
    'names of prototypes for sites',
    'probes',
    () => 'x,y,site\n0,0,__proto__\n1,0,__proto__\n9,0,constructor\n',
    'read',
  ],
  [
    'a site for each of 100,000 probes',
    'probes',
    () => `x,y,site\n${many(99_999, (i) => `${i % 400},${i},S${i}`)}`,
    'read',
  ],
  ['100,000 probes on one line', 'probes', () => `x,y\n${many(99_999, (i) => `${i / 1000},0`)}`, 'read'],
  [
    '100,000 probes on a circle',
    'probes',
    () => `x,y\n0.1,0.2\n0.3,0.1\n${many(50_000, (i) => `${900 * Math.cos(i)},${900 * Math.sin(i)}`)}`,
    'read',
  ],
  ['a height map whose points are one', 'heights', () => `x,y,z\n${'1,1,0\n'.repeat(90_000)}`, 'UNREADABLE'],

  ['a drawing of line ends', 'drawing', () => '\n'.repeat(LONGEST_TEXT), 'UNREADABLE'],
  ['a drawing of blanks', 'drawing', () => `${' '.repeat(1e6)}x`, 'UNREADABLE'],
  [
    'five million entities without a group',
    'drawing',
    () => `0\nSECTION\n2\nENTITIES\n${'0\nA\n'.repeat(4_900_000)}`,
    'TOO_LARGE',
  ],
  ['blocks within blocks, each ten times', 'drawing', () => laughs(10, circle(0, 0, 1)), 'TOO_LARGE'],
  ['the same with nothing in them', 'drawing', () => laughs(10, []), 'TOO_LARGE'],
  ['the same with what is not read', 'drawing', () => laughs(10, [0, 'HATCH', 8, 'L']), 'TOO_LARGE'],
  [
    'a block within itself',
    'drawing',
    () => dxf([...box(0, 0, 9, 9), 0, 'INSERT', 2, 'B'], { blocks: block([0, 'INSERT', 2, 'B', ...circle(1, 1, 1)]) }),
    'read',
  ],
  [
    'a block placed a billion times in no row',
    'drawing',
    () => dxf([...box(0, 0, 9, 9), 0, 'INSERT', 2, 'B', 70, 1e9, 71, 0], { blocks: block([]) }),
    'read',
  ],
  [
    'a block placed a billion times to the left',
    'drawing',
    () => dxf([...box(0, 0, 9, 9), 0, 'INSERT', 2, 'B', 70, 1e9, 71, -1], { blocks: block([]) }),
    'read',
  ],
  [
    'a block based on NaN',
    'drawing',
    () => dxf([...box(0, 0, 9, 9), 0, 'INSERT', 2, 'B'], { blocks: block(circle(1, 1, 1), 'NaN') }),
    'read',
  ],
  [
    'a coordinate of a million digits and a letter',
    'drawing',
    () => dxf([...box(0, 0, 9, 9), ...line(0, 0, 1, 1).slice(0, -1), `${'1'.repeat(2e5)}x`]),
    'read',
  ],
  [
    'coordinates at the end of doubles',
    'drawing',
    () =>
      dxf([
        ...box(0, 0, 9, 9),
        ...circle(1e308, -1e308, 1e308),
        ...light([
          [1e308, 0],
          [-1e308, 1],
          [0, 1e308],
        ]),
      ]),
    'read',
  ],
  [
    'NaN and Infinity for coordinates',
    'drawing',
    () => dxf([...box(0, 0, 9, 9), 0, 'CIRCLE', 10, 'NaN', 20, 'Infinity', 40, '-inf']),
    'read',
  ],
  [
    'names of prototypes for layers and entities',
    'drawing',
    () => dxf([...box(0, 0, 9, 9, '__proto__'), 0, '__PROTO__', 8, 'constructor', 0, 'CONSTRUCTOR', 8, '__proto__']),
    'read',
  ],
  [
    'a hundred thousand lines in one chain',
    'drawing',
    () => dxf(Array.from({ length: 60_000 }, (_, i) => line(i, i % 2, i + 1, (i + 1) % 2)).flat()),
    'UNREADABLE',
  ],
  [
    'fifty thousand lines from one point',
    'drawing',
    () =>
      dxf([
        ...box(-900, -900, 900, 900, 'B'),
        ...Array.from({ length: 50_000 }, (_, i) => line(0, 0, Math.cos(i), Math.sin(i))).flat(),
      ]),
    'TOO_LARGE',
  ],
  [
    'huge ellipses',
    'drawing',
    () =>
      dxf([
        ...box(0, 0, 9, 9),
        ...Array.from({ length: 300 }, (_, i) => [0, 'ELLIPSE', 8, 'L', 10, i, 20, 0, 11, 1e12, 21, 0, 40, 0.5]).flat(),
      ]),
    'TOO_LARGE',
  ],
  [
    'a spline with no end of spans',
    'drawing',
    () =>
      dxf([
        ...box(0, 0, 9, 9),
        0,
        'SPLINE',
        71,
        1,
        ...Array.from({ length: 20_002 }, (_, i) => [40, i]).flat(),
        ...Array.from({ length: 20_000 }, (_, i) => [10, (i % 2) * 1e9, 20, i]).flat(),
      ]),
    'read',
  ],
  ['UTF-16 taken for UTF-8 in a drawing', 'drawing', () => widened(dxf(box(0, 0, 9, 9))), 'UNREADABLE'],

  [
    'entities within entities',
    'drawing',
    () =>
      `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "lol">${many(12, (i) => `<!ENTITY ${String.fromCharCode(98 + i)} "${`&${String.fromCharCode(97 + i)};`.repeat(10)}">`, '')}]>${svg(`<text>&m;</text>${rect}`)}`,
    'UNREADABLE',
  ],
  [
    'an entity from a file',
    'drawing',
    () => `<!DOCTYPE svg [<!ENTITY f SYSTEM "file:///etc/hostname">]>${svg(`<text>&f;</text>${rect}`)}`,
    'UNREADABLE',
  ],
  [
    'a script, a handler and a foreign page',
    'drawing',
    () =>
      svg(
        `<script>alert(1)</script><foreignObject><iframe src="x"/></foreignObject><rect onload="alert(1)" x="1" y="1" width="40" height="30"/>`,
      ),
    'read',
  ],
  ['an element that uses itself', 'drawing', () => svg(`<g id="a"><use href="#a"/>${rect}</g>`), 'read'],
  ['groups a thousand deep', 'drawing', () => svg(`${'<g>'.repeat(1000)}${rect}${'</g>'.repeat(1000)}`), 'read'],
  ['groups half a million deep', 'drawing', () => svg(`${'<g>'.repeat(5e5)}${rect}${'</g>'.repeat(5e5)}`), 'TOO_LARGE'],
  [
    'a width of a million digits and a letter',
    'drawing',
    () => svg(rect, `width="${'1'.repeat(2e5)}z" height="60mm"`),
    'read',
  ],
  [
    'a coordinate of a million digits and a letter in an SVG',
    'drawing',
    () => svg(`${rect}<rect x="1" y="1" height="3" width="${'1'.repeat(2e5)}z"/>`),
    'read',
  ],
  [
    'a path of half a million curves',
    'drawing',
    () => svg(`${rect}<path d="M0 0${'c1 1 1e9 1e9 0 1'.repeat(5e5)}z"/>`),
    'TOO_LARGE',
  ],
  ['half a million paths without a length', 'drawing', () => svg(`${rect}${'<path d=""/>'.repeat(5e5)}`), 'TOO_LARGE'],
  [
    'names of prototypes for groups and attributes',
    'drawing',
    () => svg(`<g id="__proto__" __proto__="x" constructor="y">${rect}</g>`),
    'read',
  ],
  [
    'a group with a name of a million letters',
    'drawing',
    () => svg(`<g id="${'n'.repeat(1e6)}">${rect}${'<text>x</text><image/>'.repeat(1000)}</g>`),
    'read',
  ],
  ['a drawing cut off', 'drawing', () => svg(rect).slice(0, -9), 'UNREADABLE'],
];

function requireFinite(value: unknown): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`a reading holds ${value}`);
  if (typeof value === 'object' && value !== null) for (const each of Object.values(value)) requireFinite(each);
}

describe('hostile files of other programs', () => {
  it.each(files)(
    '%s (%s) are read safely or refused with what to do',
    (_name, reader, make, expected) => {
      const text = make();
      const begun = process.cpuUsage();
      let outcome: Expected = 'read';
      let reading: unknown = null;
      try {
        reading = readers[reader](text);
      } catch (thrown) {
        if (!(thrown instanceof Fault)) throw thrown;
        outcome = thrown.code;
        expect(thrown.message.length).toBeLessThan(1000);
        expect(thrown.message).toMatch(/\.$/);
        expect(JSON.stringify(thrown.details ?? {}).length).toBeLessThan(100_000);
      }
      const { user, system } = process.cpuUsage(begun);
      expect(outcome).toBe(expected);
      expect((user + system) / 1e6).toBeLessThan(SLOWEST);
      if (reading !== null) {
        // A page is sent all of it.
        expect(JSON.stringify(reading).length / 1e6).toBeLessThan(LARGEST);
        requireFinite(reading);
      }
      expect(Reflect.get({}, 'polluted')).toBeUndefined();
      expect(Object.keys(Object.prototype)).toEqual([]);
    },
    120_000,
  );
});
