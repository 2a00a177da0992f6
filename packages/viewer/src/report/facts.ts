import { type HeadModel, sitePitch } from '@flathead/solver';
import { exponentText } from '../format/number.ts';
import { pairWords, plain, shapeWords, times } from './shape-words.ts';

/** What is given, and the value with its unit. */
export type Fact = readonly [what: string, value: string];

/** Facts that stand together. */
export interface FactGroup {
  readonly title: string;
  readonly facts: readonly Fact[];
}

const SIDES = { board: 'board side', device: 'device side', level: 'level with the body, let half into either face' };
const JOINS = {
  bonded: 'bonded',
  sliding: 'lying on, free to slide',
  bracket: 'unknown: judged by the worse of sliding and bonded',
};

/** Every input of a head but its lists, with units, in the order in which it is built. */
export function headFacts(model: HeadModel): FactGroup[] {
  const { body, theory } = model;
  return [
    {
      title: 'Body',
      facts: [
        ['Outline', shapeWords(body.outline)],
        ['Thickness', `${plain(body.thickness)} mm`],
        ['Material', body.material],
        ...(body.openings ?? []).map((shape, i): Fact => [`Opening ${i + 1}`, shapeWords(shape)]),
      ],
    },
    sites(model),
    probes(model),
    ...frame(model),
    limits(model),
    {
      title: 'Method',
      facts: [
        ['Theory', theory === 'thin' ? 'thin plate' : 'plate with transverse shear'],
        ['Mesh', meshWords(model.mesh)],
      ],
    },
  ];
}

function sites({ sites }: HeadModel): FactGroup {
  const { columns, rows, die, skip, origin = [0, 0] } = sites;
  return {
    title: 'Sites',
    facts: [
      ['Pattern', `${columns} × ${rows} = ${columns * rows} sites`],
      ['Site to site, x and y', `${times(sitePitch(sites))} mm`],
      ...optional('Die with scribe line', die, (size) => `${times(size)} mm`),
      ...optional('Skipped dies, x and y', skip, times),
      ['Centre of the pattern', `${pairWords(origin)} mm`],
    ],
  };
}

function probes({ sites: { columns, rows, probes } }: HeadModel): FactGroup {
  const { count, field, preload, touchdown, rate, relax, kind = 'floating', holes } = probes;
  const bore = holes?.counterbore;
  return {
    title: 'Probes',
    facts: [
      ['Count', `${count} in each site, ${count * columns * rows} in all`],
      ['Field', `${times(field)} mm`],
      ['Kind', kind],
      ['Preload on the board side', `${plain(preload)} N each`],
      ...optional('Force at test height', touchdown, (force) => `${plain(force)} N each`),
      ...optional('Spring rate', rate, (value) => `${plain(value)} N/mm`),
      ['Load as the head bows', relax ? 'falls with it: probes relax' : 'stays'],
      [
        'Holes',
        holes === undefined
          ? 'not given: the field counts as solid'
          : `Ø ${plain(holes.diameter)} at ${plain(holes.pitch)} mm, ${holes.pattern}${holes.angle ? `, turned ${plain(holes.angle)}°` : ''}`,
      ],
      ...optional('Counterbore', bore, (b) => `Ø ${plain(b.diameter)} mm, ${plain(b.depth)} mm deep, ${b.side} side`),
    ],
  };
}

function frame({ frame }: HeadModel): FactGroup[] {
  if (frame === undefined) return [{ title: 'Frame', facts: [['Frame', 'none']] }];
  const { outer, window, thickness, material, side, join, ribs = [] } = frame;
  return [
    {
      title: 'Frame',
      facts: [
        ['Outer edge', shapeWords(outer)],
        ['Window', shapeWords(window)],
        ['Thickness', `${plain(thickness)} mm`],
        ['Material', material],
        ['Place', SIDES[side]],
        ['Joint to the body', JOINS[join]],
        ...ribs.map((rib, i): Fact => {
          const size = `${plain(rib.width)} mm wide, ${plain(rib.thickness ?? thickness)} mm thick`;
          if ('between' in rib) {
            const skipped = rib.skip?.length ? `, none in gap ${rib.skip.join(', ')}` : '';
            return [`Ribs ${i + 1}`, `between ${rib.between}, ${size}${skipped}`];
          }
          return [`Rib ${i + 1}`, `from ${pairWords(rib.from)} to ${pairWords(rib.to)} mm, ${size}`];
        }),
      ],
    },
  ];
}

function limits({ limits }: HeadModel): FactGroup {
  const { bow, flatness, contactForce, strengthFactor, failureProbability, fastener, margin } = limits;
  return {
    title: 'Limits',
    facts: [
      ['Bow', `at most ${plain(bow * 1000)} µm`],
      ...optional('Flatness', flatness, (value) => `at most ${plain(value * 1000)} µm`),
      ...optional('Contact force', contactForce, (value) => `at least ${plain(value)} N each`),
      ...optional('Strength factor', strengthFactor, (value) => `at least ${plain(value)}`),
      ...optional('Failure probability', failureProbability, (value) => `at most ${powers(value)}`),
      ...optional('Use of fasteners', fastener, (value) => `at most ${plain(value * 100)} %`),
      ...optional('Kept in hand', margin, (value) => `${plain(value * 100)} % of each limit`),
    ],
  };
}

function meshWords(mesh: HeadModel['mesh']): string {
  if (mesh === undefined) return 'size chosen by the program';
  if ('size' in mesh) return `elements of ${plain(mesh.size)} mm`;
  return `refined until errors are below ${plain(mesh.tolerance * 100)} % of the limits`;
}

function optional<T>(what: string, value: T | undefined, words: (value: T) => string): Fact[] {
  return value === undefined ? [] : [[what, words(value)]];
}

function powers(value: number): string {
  return exponentText(value).replace('-', '\u2212');
}
