import { describe, expect, it } from 'vitest';
import { Fault, type FaultCode } from '../../src/fault/fault.ts';
import { compileHead } from '../../src/model/compile.ts';
import { readHeadModel } from '../../src/model/read.ts';
import { readPlateProblem } from '../../src/plate/read.ts';
import { LONGEST_TEXT } from '../../src/plate/read-json.ts';
import { twoByTwo } from '../model/two-by-two.ts';

/** Most of a second that reading any file may take, on a busy machine. */
const SLOWEST = 5;

const plate = {
  plate: 1,
  outline: { rectangle: [60, 40] },
  section: { E: 66_000, nu: 0.29, thickness: 4 },
  supports: [{ at: [-25, -15] }, { at: [25, -15] }, { at: [0, 15] }],
  loads: [{ over: 'all', pressure: 0.01 }],
};
const text = (changes: object) => JSON.stringify({ ...plate, ...changes });
const head = (changes: object) => JSON.stringify({ ...twoByTwo, ...changes });
/** A key that an object literal would take for the prototype. */
const withRaw = (members: string) => `${JSON.stringify(plate).slice(0, -1)},${members}}`;
const many = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));
const nested = (depth: number, open: string, close: string) => open.repeat(depth) + close.repeat(depth);
const ring = (count: number, radius: number) =>
  many(count, (i) => [radius * Math.cos((2 * Math.PI * i) / count), radius * Math.sin((2 * Math.PI * i) / count)]);

type Expected = FaultCode | 'read';
type Hostile = readonly [name: string, kind: 'plate' | 'head', text: () => string, expected: Expected];

const files: readonly Hostile[] = [
  ['empty', 'plate', () => '', 'NOT_JSON'],
  ['only a byte order mark', 'plate', () => '\uFEFF', 'NOT_JSON'],
  ['only spaces', 'plate', () => ' \n\t'.repeat(1e5), 'NOT_JSON'],
  ['one letter too many', 'plate', () => 'x'.repeat(LONGEST_TEXT + 1), 'TOO_LARGE'],
  ['as many letters as are read', 'plate', () => `"${'x'.repeat(LONGEST_TEXT - 2)}"`, 'SCHEMA'],
  ['millions of spaces before the model', 'plate', () => ' '.repeat(1e7) + text({}), 'read'],
  ['lists within lists', 'plate', () => nested(1e6, '[', ']'), 'TOO_LARGE'],
  ['objects within objects, open', 'plate', () => '{"a":'.repeat(1e6), 'TOO_LARGE'],
  ['a value at depth 33', 'plate', () => text({ note: JSON.parse(nested(33, '[', ']')) }), 'TOO_LARGE'],
  ['a value at depth 20', 'plate', () => text({ note: JSON.parse(nested(20, '[', ']')) }), 'SCHEMA'],
  ['cut off in a key', 'plate', () => text({}).slice(0, 31), 'NOT_JSON'],
  ['cut off in a number', 'plate', () => text({}).slice(0, 40), 'NOT_JSON'],
  ['two models', 'plate', () => text({}) + text({}), 'NOT_JSON'],
  ['a key twice', 'plate', () => withRaw('"plate":1'), 'SCHEMA'],
  ['a key twice, once escaped', 'plate', () => withRaw('"pl\\u0061te":1'), 'SCHEMA'],
  ['a comment', 'plate', () => `// model\n${text({})}`, 'NOT_JSON'],
  ['NaN', 'plate', () => text({}).replace('66000', 'NaN'), 'NOT_JSON'],
  ['Infinity', 'plate', () => text({}).replace('66000', '-Infinity'), 'NOT_JSON'],
  ['a number beyond doubles', 'plate', () => text({}).replace('66000', '1e999'), 'OUT_OF_RANGE'],
  ['a number of a million digits', 'plate', () => text({}).replace('66000', '9'.repeat(1e6)), 'OUT_OF_RANGE'],
  ['a fraction of a million digits', 'plate', () => text({}).replace('0.29', `0.${'2'.repeat(1e6)}`), 'read'],
  ['a hexadecimal number', 'plate', () => text({}).replace('66000', '0x101D0'), 'NOT_JSON'],
  ['a number as a word', 'plate', () => text({ section: { ...plate.section, E: '66000' } }), 'SCHEMA'],
  ['a null byte', 'plate', () => text({}).replace('plate', 'pl\u0000te'), 'NOT_JSON'],
  ['an unpaired surrogate in a name', 'plate', () => withRaw('"name":"\\ud800"'), 'read'],
  ['a script in a name', 'plate', () => text({ name: '</script><script>alert(1)</script>' }), 'read'],
  ['a formula in a name', 'plate', () => text({ name: '=HYPERLINK("http://localhost","x")' }), 'read'],
  ['a name of a million letters', 'plate', () => text({ name: 'x'.repeat(1e6) }), 'SCHEMA'],
  ['a key of a million letters', 'plate', () => withRaw(`"${'k'.repeat(1e6)}":1`), 'SCHEMA'],
  ['a hundred thousand unknown keys', 'plate', () => withRaw(many(1e5, (i) => `"k${i}":1`).join(',')), 'SCHEMA'],
  ['__proto__ at the top', 'plate', () => withRaw('"__proto__":{"polluted":true}'), 'SCHEMA'],
  ['__proto__ escaped', 'plate', () => withRaw('"\\u005f_proto__":{"polluted":true}'), 'SCHEMA'],
  ['__proto__ deep down', 'plate', () => text({}).replace('"nu"', '"__proto__":{"polluted":true},"nu"'), 'SCHEMA'],
  ['constructor.prototype', 'plate', () => withRaw('"constructor":{"prototype":{"polluted":true}}'), 'SCHEMA'],
  [
    '__proto__ as a material',
    'head',
    () => head({}).replace(/}$/, ',"materials":{"__proto__":{"E":1,"nu":0}}}'),
    'SCHEMA',
  ],
  [
    'constructor as a material',
    'head',
    () => head({ body: { ...twoByTwo.body, material: 'constructor' } }),
    'UNKNOWN_MATERIAL',
  ],
  [
    'toString as a screw',
    'head',
    () => head({ fasteners: twoByTwo.fasteners.map((f) => ({ ...f, screw: 'toString' })) }),
    'UNKNOWN_SCREW',
  ],
  ['hasOwnProperty as a site', 'head', () => head({ cases: [{ name: 'one', touched: ['hasOwnProperty'] }] }), 'SCHEMA'],
  ['a list in place of the model', 'plate', () => `[${text({})}]`, 'SCHEMA'],
  ['a word in place of the model', 'head', () => '"head"', 'SCHEMA'],
  ['a head in place of a plate', 'plate', () => head({}), 'SCHEMA'],
  ['51,000 loads', 'plate', () => text({ loads: many(51_000, () => ({ at: [0, 0], force: 1 })) }), 'TOO_LARGE'],
  ['2,001 supports', 'plate', () => text({ supports: many(2001, (i) => ({ at: [i / 100 - 10, 0] })) }), 'TOO_LARGE'],
  ['an outline of 20,001 corners', 'plate', () => text({ outline: { polygon: ring(20_001, 30) } }), 'TOO_LARGE'],
  ['an outline of 20,000 corners', 'plate', () => text({ outline: { polygon: ring(20_000, 30) } }), 'read'],
  [
    'an outline that crosses itself 5,000 times',
    'plate',
    () => text({ outline: { polygon: many(10_000, (i) => [(i * 7919) % 101, (i * 104_729) % 97]) } }),
    'BAD_SHAPE',
  ],
  ['an outline on one spot', 'plate', () => text({ outline: { polygon: many(5000, () => [1, 1]) } }), 'BAD_SHAPE'],
  [
    '600,000 values',
    'plate',
    () => text({ regions: many(9000, () => ({ shape: { polygon: ring(30, 5) }, section: plate.section })) }),
    'TOO_LARGE',
  ],
  ['elements of 0.0001 mm', 'plate', () => text({ mesh: { size: 0.0001 } }), 'TOO_LARGE'],
  [
    'a head of 64 by 64 sites and 20,000 probes each',
    'head',
    () =>
      head({
        sites: { ...twoByTwo.sites, columns: 64, rows: 64, probes: { ...twoByTwo.sites.probes, count: 20_000 } },
      }),
    'OUTSIDE',
  ],
  [
    'a wafer of a metre',
    'head',
    () => head({ cases: [{ name: 'w', touched: { wafer: { diameter: 1000, edge: 0 } } }] }),
    'read',
  ],
];

describe('hostile files', () => {
  it('are more than 40, each with a name of its own', () => {
    expect(files.length).toBeGreaterThan(40);
    expect(new Set(files.map(([name]) => name)).size).toBe(files.length);
  });

  it.each(files)('%s (%s)', (_, kind, make, expected) => {
    const hostile = make();
    const begin = performance.now();
    expect(outcomeOf(kind, hostile)).toBe(expected);
    expect((performance.now() - begin) / 1000).toBeLessThan(SLOWEST);
    expect('polluted' in {}).toBe(false);
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

/** Reads a file, and compiles it where it is a head. A refusal is short enough to be shown, whatever it quotes. */
function outcomeOf(kind: 'plate' | 'head', hostile: string): Expected {
  try {
    if (kind === 'plate') readPlateProblem(hostile);
    else compileHead(readHeadModel(hostile));
    return 'read';
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
    expect(thrown.message.length).toBeLessThan(2000);
    expect(thrown.path.length).toBeLessThanOrEqual(300);
    expect(JSON.stringify(thrown.details).length).toBeLessThan(100_000);
    return thrown.code;
  }
}
