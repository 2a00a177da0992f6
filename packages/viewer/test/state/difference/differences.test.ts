import { checkHeadModel, type HeadModel } from '@flathead/solver';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../src/app/examples.ts';
import { answerKey } from '../../../src/state/answer-store.ts';
import { differences, differenceText } from '../../../src/state/difference/differences.ts';
import { sampleHead } from '../sample-head.ts';

const words = (from: HeadModel, to: HeadModel) => differenceText(differences(from, to));
const frame = {
  outer: { rectangle: [60, 40] },
  window: { rectangle: [40, 26] },
  material: 'stainless-17-4',
  thickness: 4,
  side: 'device',
  join: 'bonded',
} as const;
const framed = checkHeadModel({ ...sampleHead, frame });
const changed = (change: Record<string, unknown>, of: HeadModel = sampleHead) => checkHeadModel({ ...of, ...change });
const placed = (places: Readonly<Record<string, readonly [number, number]>>) =>
  changed({ fasteners: sampleHead.fasteners.map((f) => ({ ...f, at: places[f.name] ?? f.at })) });

describe('differences in words', () => {
  it('say nothing of a head and itself, its name or its note', () => {
    expect(differences(sampleHead, changed({ name: 'other', note: 'n' }))).toEqual([]);
  });

  it('say fields in words of the trade, with their units', () => {
    const body = { ...sampleHead.body, thickness: 5.5, material: 'macor', outline: { rectangle: [62, 40], corner: 2 } };
    expect(words(sampleHead, changed({ body, materials: { macor: { E: 66000, nu: 0.29 } } }))).toBe(
      'own materials added; body outline 60 × 40 → 62 × 40 mm; body 4 → 5.5 mm; body material alumina-96 → macor',
    );
    expect(words(sampleHead, changed({ limits: { bow: 0.025, flatness: 0.02, margin: 0.1 } }))).toBe(
      'limit of bow 30 → 25 µm; limit of flatness 20 µm, before none; margin kept in hand 10 %, before none',
    );
    expect(words(changed({ limits: { bow: 0.03, failureProbability: 1e-6 } }), sampleHead)).toBe(
      'no limit of failure probability any more, was 0.000001',
    );
    const { pitch: _, ...sites } = sampleHead.sites;
    expect(words(sampleHead, changed({ sites: { ...sites, die: [7, 6], skip: [1, 1] } }))).toBe(
      'sites on dies of 7 × 6 mm, 1 × 1 skipped, before at a pitch of 14 × 12 mm',
    );
  });

  it('say what a field that is left out stands for', () => {
    const probes = { ...sampleHead.sites.probes, kind: 'shouldered' } as const;
    const shouldered = changed({ sites: { ...sampleHead.sites, probes } });
    expect(words(sampleHead, shouldered)).toBe('probes floating → shouldered');
    expect(words(shouldered, sampleHead)).toBe('probes shouldered → floating');
  });

  it('say how fasteners moved, those that moved alike together', () => {
    expect(words(sampleHead, placed({ W: [-18.8, 0] }))).toBe('W moved 6.2 mm inwards');
    expect(words(sampleHead, placed({ W: [-20, 0], E: [20, 0], NW: [-25, 12] }))).toBe(
      'NW moved 3.0 mm along y; W and E moved 5.0 mm inwards',
    );
    expect(words(sampleHead, placed({ E: [27, 0], NE: [22, 17] }))).toBe(
      'NE moved −3.0, 2.0 mm; E moved 2.0 mm outwards',
    );
    const all = sampleHead.fasteners.map(({ name, at: [x, y] }, i): [string, [number, number]] => [
      name,
      [x, y + i + 1],
    ]);
    expect(words(sampleHead, placed(Object.fromEntries(all)))).toBe('6 fasteners moved, 1.0 to 6.0 mm');
  });

  it('say what became of fasteners and their screws', () => {
    const [nw, ne, ...others] = sampleHead.fasteners;
    const to = changed({
      fasteners: [{ ...nw, screw: 'M3' }, { ...ne, screw: 'M3', preload: 900 }, ...others.slice(0, -1)],
    });
    expect(words(sampleHead, to)).toBe('fastener E removed; NW and NE: screw M2.5 → M3; NE: preload none → 900 N');
    expect(words(to, sampleHead)).toContain('fastener E added; NW and NE: screw M3 → M2.5');
  });

  it('say what became of the frame and its ribs', () => {
    const ribbed = (ribs: unknown) => changed({ frame: { ...frame, ribs } });
    const line = (x: number) => ({ from: [x, -13], to: [x, 13], width: 3 });
    expect(words(sampleHead, framed)).toBe('frame added');
    expect(words(framed, sampleHead)).toBe('frame removed');
    expect(words(framed, ribbed([line(-4), line(4)]))).toBe('2 ribs added');
    expect(words(ribbed([line(-4), line(4)]), ribbed([line(-3), line(4)]))).toBe('1 rib changed');
    expect(words(framed, ribbed([{ between: 'columns', width: 3 }]))).toBe('ribs between columns added, 3 mm wide');
    expect(
      words(ribbed([{ between: 'rows', width: 3 }]), ribbed([{ between: 'rows', width: 4, thickness: 5, skip: [1] }])),
    ).toBe('ribs between rows 3 → 4 mm wide, as the frame → 5 mm thick, not in gap 1');
  });

  it('say what became of load cases, seats and keep-outs by name', () => {
    const cases = [
      { name: 'mounted', temperature: 40 },
      { name: 'soak', temperature: 85 },
    ];
    const keepOuts = [{ name: 'connector', shape: { circle: 3 } }];
    expect(words(sampleHead, changed({ cases, keepOuts }))).toBe(
      'keep-out connector added; load case soak added, load case mounted changed',
    );
  });

  it('make the one head of the other, in whatever order they are made', () => {
    const heads = [...examples.map(({ model }) => model), sampleHead, framed];
    expect(heads.length).toBeGreaterThan(5);
    fc.assert(
      fc.property(
        fc.constantFrom(...heads),
        fc.constantFrom(...heads),
        fc.infiniteStream(fc.nat()),
        (from, to, seeds) => {
          const changes = differences(from, to).map((change) => ({ change, place: seeds.next().value }));
          const shuffled = changes.sort((a, b) => a.place - b.place);
          const made = shuffled.reduce((model, { change }) => change.make(model), from);
          expect(answerKey(made)).toBe(answerKey(to));
          expect(new Set(changes.map(({ change }) => change.id)).size).toBe(changes.length);
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});
