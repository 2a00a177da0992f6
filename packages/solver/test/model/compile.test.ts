import { describe, expect, it } from 'vitest';
import { intersection, union } from '../../src/geometry/boolean.ts';
import type { Region } from '../../src/geometry/point.ts';
import { area } from '../../src/geometry/region.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import { type CompiledHead, compileHead } from '../../src/model/compile.ts';
import type { HeadModel } from '../../src/model/head-model.ts';
import { keepOutRemarks } from '../../src/model/keep-outs.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { altered, twoByTwo } from './two-by-two.ts';

const compile = (changes: Readonly<Record<string, unknown>>, model: HeadModel = twoByTwo) =>
  compileHead(checkHeadModel(altered(model, changes)));

/** Area that each section is left with after all painting, keyed by the thicknesses of its layers. */
function paintedAreas({ problems: [problem] }: CompiledHead): Record<string, number> {
  const ring = (shape: Parameters<typeof shapeRing>[0]): Region => [shapeRing(shape, { chord: 0.01 })];
  const outline = ring(problem.outline);
  const holes = (problem.openings ?? []).flatMap(ring);
  const left: Record<string, number> = {};
  let above: Region = holes;
  const add = (section: (typeof problem)['section'], region: Region) => {
    const own = intersection(region, outline);
    const layers = 'layers' in section ? section.layers : [section];
    const key = layers.map((layer) => ('thickness' in layer ? layer.thickness : 0)).join('+');
    left[key] = (left[key] ?? 0) + area(own) - area(intersection(own, above));
    above = union(above, own);
  };
  for (const { shape, section } of [...(problem.regions ?? [])].reverse()) add(section, ring(shape));
  add(problem.section, outline);
  return left;
}

const rounded = (width: number, height: number, r: number) => width * height - (4 - Math.PI) * r * r;
const outer = rounded(52, 46, 2);
const window = rounded(30, 28, 2);

describe('compileHead', () => {
  it('cuts the plate into body and framed body', () => {
    const areas = paintedAreas(compile({}));
    expect(areas['4']).toBeCloseTo(window, 6);
    expect(areas['3+4']).toBeCloseTo(outer - window, 6);
  });

  it.each([
    { side: 'board', join: 'sliding' },
    { side: 'device', join: 'sliding' },
    { side: 'level', join: 'bonded' },
  ])('knows what each layer of each section belongs to, frame $side', ({ side, join }) => {
    const outer = { rectangle: [60, 50] };
    const holes = { pitch: 0.3, diameter: 0.15, pattern: 'square' };
    const changes = { 'frame.side': side, 'frame.join': join, 'frame.outer': outer, 'sites.probes.holes': holes };
    const { problems, plan } = compile(changes);
    const sections = [problems[0].section, ...(problems[0].regions ?? []).map(({ section }) => section)];
    // Alumina and steel by their stiffness.
    const parts = sections.map((section) =>
      ('layers' in section ? section.layers : [section]).map((layer) =>
        'E' in layer && layer.E === 320_000 ? 'body' : 'frame',
      ),
    );
    expect(plan.sectionParts).toEqual(parts);
    expect(new Set(parts.map((part) => part.join()))).toHaveProperty('size', 3);
  });

  it('lays ribs across the window, in the middle of each gap', () => {
    const ribs = [
      { between: 'columns', width: 3 },
      { between: 'rows', width: 2, thickness: 1 },
    ];
    const areas = paintedAreas(compile({ 'frame.ribs': ribs }));
    expect(areas['3+4']).toBeCloseTo(outer - window + 3 * 28 - 3 * 2, 6);
    expect(areas['1+4']).toBeCloseTo(2 * 30, 6);
    expect(areas['4']).toBeCloseTo(window - 3 * 28 - 2 * 30 + 3 * 2, 6);
  });

  it('leaves gaps out that are skipped', () => {
    const three = { 'sites.columns': 3, 'sites.pitch': [8, 10], 'sites.die': undefined, 'sites.skip': undefined };
    const both = paintedAreas(compile({ ...three, 'frame.ribs': [{ between: 'columns', width: 2 }] }));
    const one = paintedAreas(compile({ ...three, 'frame.ribs': [{ between: 'columns', width: 2, skip: [2] }] }));
    expect(both['3+4']).toBeCloseTo(outer - window + 2 * 2 * 28, 6);
    expect(one['3+4']).toBeCloseTo(outer - window + 2 * 28, 6);
  });

  it('puts a rib from point to point', () => {
    const areas = paintedAreas(compile({ 'frame.ribs': [{ from: [0, -20], to: [0, 20], width: 3 }] }));
    expect(areas['3+4']).toBeCloseTo(outer - window + 3 * 28, 6);
  });

  it('lets the frame reach beyond the body and over its openings', () => {
    const areas = paintedAreas(
      compile({
        'body.outline': { rectangle: [40, 36] },
        'body.openings': [{ rectangle: [4, 4], centre: [16, 0] }],
        'frame.outer': { rectangle: [60, 50] },
        'frame.window': { rectangle: [32, 28] },
        'frame.ribs': [{ between: 'columns', width: 3 }],
        'fasteners.0.at': [-27, 18],
      }),
    );
    // The opening reaches from x = 14 to 18, of which the window (to 16) keeps 2 mm open.
    expect(areas['3']).toBeCloseTo(60 * 50 - 40 * 36 + 2 * 4, 6);
    expect(areas['3+4']).toBeCloseTo(40 * 36 - 32 * 28 - 2 * 4 + 3 * 28, 6);
    expect(areas['4']).toBeCloseTo(32 * 28 - 3 * 28 - 2 * 4, 6);
  });

  it('joins a frame that only touches the body', () => {
    const { problems } = compile({
      'body.outline': { rectangle: [30, 28] },
      'frame.window': { rectangle: [30, 28] },
      'frame.outer': { rectangle: [52, 46] },
    });
    expect(problems[0].openings).toEqual([]);
    expect(
      paintedAreas(compile({ 'body.outline': { rectangle: [30, 28] }, 'frame.window': { rectangle: [30, 28] } }))['4'],
    ).toBeCloseTo(840, 6);
  });

  it('needs no frame', () => {
    const { problems } = compile({ frame: undefined });
    expect(problems[0].regions).toEqual([]);
    expect(problems[0].section).toEqual({ E: 320_000, nu: 0.22, expansion: 6.5e-6, thickness: 4 });
  });

  it.each([
    [
      'board',
      'sliding',
      [
        [3, -5],
        [4, -2],
      ],
    ],
    [
      'device',
      'sliding',
      [
        [4, -2],
        [3, 2],
      ],
    ],
    [
      'level',
      'bonded',
      [
        [1.5, -3.5],
        [4, -2],
        [1.5, 2],
      ],
    ],
  ])('stacks a frame on the %s side, %s', (side, join, layers) => {
    const { problems } = compile({ 'frame.side': side, 'frame.join': join });
    const section = problems[0].regions![0].section;
    if (!('layers' in section)) throw new Error('expected layers');
    expect(section.layers.map(({ thickness, bottom }) => [thickness, bottom])).toEqual(layers);
    expect(section.join).toBe(join);
  });

  it('gives fasteners the bearing and an estimated stiffness of their screw', () => {
    const { fasteners, problems } = compile({ 'fasteners.1.stiffness': 'rigid', 'fasteners.2.bearing': 6 });
    expect(fasteners.map(({ bearing }) => bearing)).toEqual([4.18, 4.18, 6, 4.18]);
    expect(fasteners[0].terms!.clampedLength).toBe(7);
    expect(fasteners[1].stiffness).toBeNull();
    expect(problems[0].supports![3]).toEqual({
      name: 'F4',
      at: [21, -18],
      diameter: 4.18,
      stiffness: fasteners[3].stiffness,
      acts: 'both',
    });
    expect(compile({ 'fasteners.3.acts': 'pull' }).problems[0].supports![3].acts).toBe('pull');
  });

  it('clamps only the frame where the body does not reach', () => {
    const { fasteners } = compile({ 'body.outline': { rectangle: [34, 32] } });
    expect(fasteners[0].terms!.clampedLength).toBe(3);
  });

  it('gives heads of any size a base size for one to two thousand nodes', () => {
    const row = {
      'sites.columns': 16,
      'sites.rows': 1,
      'body.outline': { rectangle: [260, 46] },
      'frame.outer': { rectangle: [260, 46] },
      'frame.window': { rectangle: [230, 20] },
    };
    for (const head of [compile({}), compile(row)]) {
      const plate = area([shapeRing(head.problems[0].outline, { chord: 0.01 })]);
      const nodes = (2 * plate) / (Math.sqrt(3) * head.meshSize ** 2);
      expect(nodes).toBeGreaterThan(1000);
      expect(nodes).toBeLessThan(2000);
    }
    expect(compile({ mesh: { size: 1.25 } }).meshSize).toBe(1.25);
  });
});

describe('the plan of an earlier compile', () => {
  const model = (changes: Readonly<Record<string, unknown>>) => checkHeadModel(altered(twoByTwo, changes));
  const { plan } = compileHead(twoByTwo);

  it.each([
    ['a fastener moves', { 'fasteners.1.at': [20, 17] }],
    ['a limit changes', { 'limits.bow': 0.02 }],
    ['a case is added', { cases: [{ name: 'mounted' }, { name: 'all', touched: 'all' }] }],
    ['another theory is asked for', { theory: 'thin' }],
  ])('is kept when %s, with the same result', (_, changes) => {
    const again = compileHead(model(changes), plan);
    expect(again.plan).toBe(plan);
    expect(again.problems).toEqual(compileHead(model(changes)).problems);
  });

  it.each([
    ['the body thickens', { 'body.thickness': 5 }],
    ['a rib is added', { 'frame.ribs': [{ between: 'columns', width: 3 }] }],
    ['sites move', { 'sites.origin': [1, 0] }],
    ['a material is redefined', { materials: { 'alumina-96': { E: 1000, nu: 0.3 } } }],
    ['a mesh is asked for', { mesh: { size: 2 } }],
  ])('is dropped when %s', (_, changes) => {
    expect(compileHead(model(changes), plan)).toEqual(compileHead(model(changes)));
  });
});

describe('load cases', () => {
  const cases = [{ name: 'mounted' }, { name: 'all', touched: 'all' }, { name: 'two', touched: ['A1', 'B2'] }];
  const total = ({ problems }: CompiledHead) =>
    problems.map(({ loads }) => loads!.reduce((sum, load) => sum + ('force' in load ? load.force : 0), 0));

  it('load every site with its preload, and none where floating probes have touched', () => {
    const [mounted, all, two] = total(compile({ cases }));
    expect(mounted).toBeCloseTo(4 * 220 * 0.04, 9);
    expect(all).toBe(0);
    expect(two).toBeCloseTo(2 * 220 * 0.04, 9);
  });

  it('stand on springs of rate count / area where probes relax and no device relieves them', () => {
    expect(compile({ cases }).problems.every((problem) => !('foundations' in problem))).toBe(true);
    const relaxed = compile({ cases, 'sites.probes.relax': true, 'sites.probes.rate': 0.3 });
    const [mounted, all, two] = relaxed.problems;
    expect(mounted.foundations).toHaveLength(4);
    expect(mounted.foundations![0]).toEqual({
      over: { rectangle: [4.5, 4], centre: [-6, 5] },
      modulus: (0.3 * 220) / (4.5 * 4),
    });
    expect(all.foundations).toBeUndefined();
    expect(two.foundations!.map(({ over }) => over)).toEqual(two.loads!.map((load) => 'over' in load && load.over));
    const shouldered = { 'sites.probes.relax': true, 'sites.probes.rate': 0.3, 'sites.probes.kind': 'shouldered' };
    for (const { foundations } of compile({ cases, ...shouldered }).problems) expect(foundations).toHaveLength(4);
  });

  it('are one for each set of sites touched over a wafer, named by it', () => {
    const touched = { wafer: { diameter: 100, edge: 3 } };
    const { cases: solved, problems } = compile({ cases: [{ name: 'mounted' }, { name: 'edge', touched }] });
    expect(solved[0]).toMatchObject({ name: 'mounted', family: null });
    expect(solved.slice(1).every(({ family }) => family === 'edge')).toBe(true);
    expect(solved.map(({ name }) => name)).toEqual(expect.arrayContaining(['edge: all', 'edge: A1 A2 B1', 'edge: B2']));
    solved.forEach(({ touched }, i) => {
      expect(problems[i].loads).toHaveLength(4 - touched.size);
    });
    const row = { 'sites.columns': 4, 'sites.rows': 1, 'sites.die': [4.6, 5], 'sites.skip': [0, 0] };
    const names = compile({ ...row, cases: [{ name: 'edge', touched }] }).cases.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['edge: A1-A3', 'edge: A3 A4', 'edge: A4']));
  });

  it('leave a site loaded where shouldered probes have touched', () => {
    for (const force of total(compile({ cases, 'sites.probes.kind': 'shouldered' })))
      expect(force).toBeCloseTo(35.2, 9);
  });

  it('share everything but their loads', () => {
    const [{ loads: _a, ...first }, { loads: _b, ...second }] = compile({ cases }).problems;
    expect(first).toEqual(second);
  });
});

describe('keepOutRemarks', () => {
  const keepOut = { name: 'connector', shape: { rectangle: [8, 6], centre: [21, 26] }, clearance: 0.5 };

  it('names fasteners whose head is in a keep-out or too near', () => {
    // The keep-out ends at y = 23; the head of F2 at [21, 18] reaches to 20.25.
    const remarks = (change: object) =>
      keepOutRemarks(checkHeadModel(altered(twoByTwo, { keepOuts: [{ ...keepOut, ...change }] })));
    expect(remarks({})).toEqual([]);
    expect(remarks({ clearance: 3 })).toEqual([
      'Fastener F2 is 2.75 mm from keep-out "connector", which asks for 3 mm clearance.',
    ]);
    expect(remarks({ shape: { rectangle: [8, 6], centre: [21, 22] } })).toEqual([
      'Fastener F2 reaches 1.25 mm into keep-out "connector".',
    ]);
  });
});
