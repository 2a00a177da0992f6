import { describe, expect, it } from 'vitest';
import { checkHeadModel, readHeadModel } from '../../src/model/read.ts';
import { faultOf } from './fault-of.ts';
import { altered, twoByTwo } from './two-by-two.ts';

const text = (changes: Readonly<Record<string, unknown>>) => JSON.stringify(altered(twoByTwo, changes));

describe('readHeadModel', () => {
  it('returns what was written', () => {
    expect(readHeadModel(text({}))).toEqual(twoByTwo);
    expect(readHeadModel(`\uFEFF${text({})}\n`)).toEqual(twoByTwo);
  });

  it.each([
    ['an empty text', '', 'NOT_JSON', /empty/, 1, 1],
    ['only spaces', ' \n\t ', 'NOT_JSON', /empty/, 1, 1],
    ['prose', 'bow of 35 um', 'NOT_JSON', /"bow" where a value was expected/, 1, 1],
    ['a comma too many', '{\n  "flathead": 1,\n}', 'NOT_JSON', /"}" where a key was expected; remove a comma/, 3, 1],
    ['a comment', '{ // head\n}', 'NOT_JSON', /no comments/, 1, 3],
    ['single quotes', "{ 'flathead': 1 }", 'NOT_JSON', /double quotes/, 1, 3],
    ['NaN', '{ "flathead": NaN }', 'NOT_JSON', /"NaN" where a value was expected/, 1, 15],
    ['an open text', '{ "name": "kestrel', 'NOT_JSON', /never closed/, 1, 11],
    ['a file cut short', '{ "name": [1, 2', 'NOT_JSON', /ends where/, 1, 16],
    ['two models', '{}\n{}', 'NOT_JSON', /nothing more/, 2, 1],
    ['a key twice', '{ "flathead": 1,\n "flathead": 1 }', 'SCHEMA', /repeats the key "flathead"/, 2, 2],
    ['a key twice by escape', '{ "ab": 1, "\\u0061b": 1 }', 'SCHEMA', /repeats the key "ab"/, 1, 12],
    ['brackets without end', '['.repeat(1_000_000), 'TOO_LARGE', /deeper than/, 1, 65],
  ])('refuses %s', (_, json, code, message, line, column) => {
    const fault = faultOf(() => readHeadModel(json));
    expect(fault.code).toBe(code);
    expect(fault.message).toMatch(message);
    expect(fault.details).toMatchObject({ line, column });
  });

  it('refuses a 50 MB text before reading it', () => {
    const json = `{ "note": "${'x'.repeat(50_000_000)}" }`;
    const begin = performance.now();
    const fault = faultOf(() => readHeadModel(json));
    expect(fault.code).toBe('TOO_LARGE');
    expect(fault.message).toMatch(/50\.0 million characters; at most 20 million are read/);
    expect(performance.now() - begin).toBeLessThan(200);
  });

  it.each([
    [
      'a negative thickness',
      { 'body.thickness': -3 },
      'OUT_OF_RANGE',
      'body.thickness',
      /is -3; expected 0.001 or more/,
    ],
    ['a zero thickness', { 'body.thickness': 0 }, 'OUT_OF_RANGE', 'body.thickness', /is 0; expected/],
    [
      'a thickness of 1e300',
      { 'body.thickness': 1e300 },
      'OUT_OF_RANGE',
      'body.thickness',
      /is 1e\+300; expected 1000 or/,
    ],
    [
      'a text for a number',
      { 'body.thickness': '4 mm' },
      'SCHEMA',
      'body.thickness',
      /is "4 mm"; expected a finite number/,
    ],
    [
      'nothing for a number',
      { 'body.thickness': null },
      'SCHEMA',
      'body.thickness',
      /is null; expected a finite number/,
    ],
    ['a missing key', { 'limits.bow': undefined }, 'SCHEMA', 'limits.bow', /is missing; add it: a finite number/],
    ['a misspelt key', { 'body.thicknes': 4 }, 'SCHEMA', 'body.thicknes', /"thicknes". Did you mean "thickness"/],
    [
      'a foreign key',
      { 'limits.colour': 4 },
      'SCHEMA',
      'limits.colour',
      /"colour". Remove it. Known here: bow, flatness/,
    ],
    [
      'an unknown word',
      { 'frame.side': 'top' },
      'SCHEMA',
      'frame.side',
      /is "top"; expected "board" or "device" or "level"/,
    ],
    [
      'a third coordinate',
      { 'fasteners.1.at': [1, 2, 3] },
      'SCHEMA',
      'fasteners.1.at',
      /3 entries; expected exactly 2/,
    ],
    ['half a site', { 'sites.columns': 2.5 }, 'SCHEMA', 'sites.columns', /expected a whole number/],
    ['no load case', { cases: [] }, 'SCHEMA', 'cases', /0 entries; expected at least 1/],
    ['another version', { flathead: 2 }, 'SCHEMA', 'flathead', /format 2; this program reads up to 1/],
    [
      'nu of 0.5',
      { materials: { glue: { E: 1, nu: 0.5 } } },
      'OUT_OF_RANGE',
      'materials.glue.nu',
      /is 0.5; expected below 0.5/,
    ],
    [
      'nu of -1',
      { materials: { glue: { E: 1, nu: -1 } } },
      'OUT_OF_RANGE',
      'materials.glue.nu',
      /is -1; expected above -1/,
    ],
    [
      '501 fasteners',
      { fasteners: Array(501).fill(twoByTwo.fasteners[0]) },
      'TOO_LARGE',
      'fasteners',
      /501 entries; expected at most 500/,
    ],
  ])('refuses %s', (_, changes, code, path, message) => {
    const fault = faultOf(() => readHeadModel(text(changes)));
    expect({ code: fault.code, path: fault.path }).toEqual({ code, path });
    expect(fault.message).toMatch(message);
  });

  it.each([
    [
      'a side of a rectangle',
      { 'body.outline': { rectangle: [50, -2] } },
      'OUT_OF_RANGE',
      'body.outline.rectangle.1',
      /is -2/,
    ],
    [
      'a key that fits no circle',
      { 'body.outline': { circle: 50, corner: 1 } },
      'SCHEMA',
      'body.outline.corner',
      /Known here: circle, centre/,
    ],
    [
      'a misspelt shape',
      { 'body.outline': { rectangel: [5, 5] } },
      'SCHEMA',
      'body.outline',
      /"rectangel" is unknown. Did you mean "rectangle"/,
    ],
    [
      'a corner of a polygon',
      {
        'body.outline': {
          polygon: [
            [0, 0],
            [9, 0],
            [9, 'b'],
          ],
        },
      },
      'SCHEMA',
      'body.outline.polygon.2.1',
      /is "b"/,
    ],
    [
      'no shape at all',
      { 'body.outline': 50 },
      'SCHEMA',
      'body.outline',
      /\{ rectangle, centre\?, corner\? } or \{ circle/,
    ],
    [
      'a misspelt word beside numbers',
      { 'fasteners.0.stiffness': 'rigd' },
      'SCHEMA',
      'fasteners.0.stiffness',
      /Did you mean "rigid"/,
    ],
    [
      'a number beside words',
      { 'fasteners.0.stiffness': -1 },
      'OUT_OF_RANGE',
      'fasteners.0.stiffness',
      /is -1; expected 0.001/,
    ],
    [
      'a rib by its key',
      { 'frame.ribs': [{ between: 'colums', width: 2 }] },
      'SCHEMA',
      'frame.ribs.0.between',
      /Did you mean "columns"/,
    ],
    ['a rib by its ends', { 'frame.ribs': [{ from: [0, 0], width: 2 }] }, 'SCHEMA', 'frame.ribs.0.to', /is missing/],
    [
      'a site that is no name',
      { 'cases.0.touched': ['A1', 2] },
      'SCHEMA',
      'cases.0.touched.1',
      /is 2; expected a text/,
    ],
  ])('speaks of the form that was meant: %s', (_, changes, code, path, message) => {
    const fault = faultOf(() => readHeadModel(text(changes)));
    expect({ code: fault.code, path: fault.path }).toEqual({ code, path });
    expect(fault.message).toMatch(message);
  });

  it('lists every issue', () => {
    const fault = faultOf(() => readHeadModel(text({ 'body.thickness': -1, 'limits.bow': 0, 'sites.rows': 0 })));
    expect(fault.message).toMatch(/\(2 more issues\)$/);
    expect(fault.details.issues).toMatchObject([
      { code: 'OUT_OF_RANGE', path: 'body.thickness' },
      { code: 'OUT_OF_RANGE', path: 'sites.rows' },
      { code: 'OUT_OF_RANGE', path: 'limits.bow' },
    ]);
  });

  it('refuses 1e999, which JSON reads as infinite', () => {
    const fault = faultOf(() => readHeadModel(text({}).replace('"thickness":4', '"thickness":1e999')));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'OUT_OF_RANGE', path: 'body.thickness' });
    expect(fault.message).toMatch(/is Infinity/);
  });

  it('refuses __proto__ where it would slip through as a name', () => {
    const json = text({}).replace('"flathead"', '"materials":{"__proto__":{"E":1,"nu":0.3}},"flathead"');
    expect(faultOf(() => readHeadModel(json))).toMatchObject({ code: 'SCHEMA', path: 'materials.__proto__' });
  });

  it('knows a plate problem when it sees one', () => {
    const fault = faultOf(() => readHeadModel('{ "plate": 1 }'));
    expect(fault.code).toBe('SCHEMA');
    expect(fault.message).toMatch(/plate problem .*flathead plate/);
  });
});

describe('checkHeadModel', () => {
  it.each([
    ['NaN', { 'body.thickness': Number.NaN }],
    ['infinity', { 'body.thickness': Number.POSITIVE_INFINITY }],
  ])('refuses %s, which only data that was never JSON can hold', (_, changes) => {
    const fault = faultOf(() => checkHeadModel(altered(twoByTwo, changes)));
    expect({ code: fault.code, path: fault.path }).toEqual({ code: 'OUT_OF_RANGE', path: 'body.thickness' });
  });

  it('refuses what runs in a circle', () => {
    const circle: Record<string, unknown> = {};
    circle.body = circle;
    expect(faultOf(() => checkHeadModel(circle)).code).toBe('TOO_LARGE');
  });

  it.each([[null], [[]], [3], ['text'], [undefined]])('refuses %j', (value) => {
    expect(faultOf(() => checkHeadModel(value)).code).toBe('SCHEMA');
  });
});
