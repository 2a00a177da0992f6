import { type HeadModel, type StudyName, sitePitch } from '@flathead/solver';
import { fieldText } from '../format/number.ts';
import { studyParameters, youngOf } from './parameters.ts';
import { type Built, setupReader } from './read-setup.ts';
import type { Setup } from './setup-store.ts';

/** What the fields of a study say before anything is typed, by what makes sense for a head. */
export function defaultSetup(study: StudyName, model: HeadModel): Setup {
  switch (study) {
    case 'placement':
      return {
        count: String(model.fasteners.length),
        mirror: model.fasteners.length % 2 === 0 ? 'both' : 'y',
        clearance: '1',
        through: 'auto',
        edge: '1',
        spacing: '',
        step: '',
        objective: 'bow',
        curve: 'none',
        fixed: '',
      };
    case 'sweep':
      return { ...rangeOf(model, 'body.thickness', ''), count: '9', path: 'body.thickness', second: '', count2: '5' };
    case 'tolerance':
      return { thickness: '0.05', young: '3', preload: '5', place: '0.1', samples: '32', seed: '1', indices: 'yes' };
    case 'sites':
      return sitesSetup(model);
  }
}

/** Ends of an axis about the value in the model, as its fields show them. */
export function rangeOf(model: HeadModel, path: string, suffix: string): Setup {
  const parameter = studyParameters(model).find((one) => one.path === path);
  if (parameter === undefined) return {};
  const { value, scale, unit } = parameter;
  const isPlace = path.startsWith('fasteners');
  const ends = isPlace ? [value - 10, value + 10] : [0.7 * value, 1.5 * value];
  const [from, to] = ends.map((end) => fieldText(Number((end * scale).toPrecision(3))));
  return { [`from${suffix}`]: from, [`to${suffix}`]: to, [`unit${suffix}`]: unit };
}

export function planOf(study: StudyName, setup: Setup, model: HeadModel): Built {
  return { placement, sweep, tolerance, sites }[study](setup, model);
}

function placement(setup: Setup, model: HeadModel): Built {
  const { number, optional, built } = setupReader(setup);
  const fixed = (setup.fixed ?? '').split('\n').filter((name) => model.fasteners.some((one) => one.name === name));
  return built({
    count: number('count', { least: 1, most: 60, whole: true }),
    mirror: setup.mirror === 'none' ? undefined : setup.mirror,
    fixed: fixed.length === 0 ? undefined : fixed,
    clearance: number('clearance', { unit: 'mm', least: 0, most: 1000 }),
    through: model.frame === undefined || setup.through === 'auto' ? undefined : setup.through,
    edge: optional('edge', { unit: 'mm', least: 0, most: 1000 }),
    spacing: optional('spacing', { unit: 'mm', least: 0, most: 10_000 }),
    step: optional('step', { unit: 'mm', least: 0.01, most: 1000 }),
    objective: setup.objective,
    curve: curveOf(setup),
  });
}

/** Over the count as many as there are, two fewer and more; one by one where nothing is mirrored. */
function curveOf({ curve, count, mirror }: Setup) {
  if (curve === 'none') return undefined;
  if (curve === 'clearance') return { over: curve };
  const by = mirror === 'none' ? 1 : 2;
  const values = [-1, 0, 1, 2, 3].map((k) => Number(count) + k * by).filter((value) => value >= 3 && value <= 60);
  return { over: curve, values };
}

function sweep(setup: Setup, model: HeadModel): Built {
  const { number, built } = setupReader(setup);
  const known = studyParameters(model);
  const axis = (pathField: string, suffix: string) => {
    const parameter = known.find(({ path }) => path === setup[pathField]) ?? known[0];
    const { path, label, unit, scale } = parameter;
    const inModel = (shown: number): number => Number((shown / scale).toPrecision(12));
    const values = {
      from: inModel(number(`from${suffix}`, { unit })),
      to: inModel(number(`to${suffix}`, { unit })),
      count: number(`count${suffix}`, { least: 2, most: 200, whole: true }),
    };
    return { name: label, path, values };
  };
  return built({ vary: [axis('path', ''), ...(setup.second === '' ? [] : [axis('second', '2')])] });
}

/** Half-widths of tolerances that are three standard deviations; an empty field or zero does not scatter. */
function tolerance(setup: Setup, model: HeadModel): Built {
  const { number, optional, refuse, built } = setupReader(setup);
  const young = youngOf(model);
  const normal = (mean: number, width: number) => ({ normal: { mean, tolerance: width, at: 3 } });
  const [thickness, share, preload, place] = [
    optional('thickness', { unit: 'mm', least: 0, most: 100 }),
    young === null ? undefined : optional('young', { unit: '%', least: 0, most: 50 }),
    optional('preload', { unit: '%', least: 0, most: 90 }),
    optional('place', { unit: 'mm', least: 0, most: 100 }),
  ];
  const vary = [
    thickness && { name: 'Thickness', path: 'body.thickness', distribution: normal(model.body.thickness, thickness) },
    share &&
      young && {
        name: 'E of the body',
        path: `materials[${young.material}].E`,
        as: 'factor',
        distribution: normal(1, Number((share / 100).toPrecision(12))),
      },
    preload && {
      name: 'Preload',
      path: 'sites.probes.preload',
      as: 'factor',
      distribution: normal(1, Number((preload / 100).toPrecision(12))),
    },
    ...(['x', 'y'] as const).map(
      (axis, i) =>
        place && {
          name: `Fasteners, ${axis}`,
          path: `fasteners[*].at[${i}]`,
          as: 'offset',
          lot: 0,
          distribution: normal(0, place),
        },
    ),
  ].filter((one) => typeof one === 'object');
  if (vary.length === 0) refuse('thickness', 'Nothing scatters. Give at least one tolerance.');
  return built({
    vary,
    samples: number('samples', { least: 4, most: 100_000, whole: true }),
    seed: number('seed', { least: 0, most: 4294967295, whole: true }),
    indices: setup.indices === 'yes',
  });
}

function sites(setup: Setup, model: HeadModel): Built {
  const { number, built } = setupReader(setup);
  const patterns = Array.from({ length: Number(setup.patterns) }, (_, i) => ({
    columns: number(`columns${i}`, { least: 1, most: 64, whole: true }),
    rows: number(`rows${i}`, { least: 1, most: 64, whole: true }),
    skip: [
      number(`skipX${i}`, { least: 0, most: 50, whole: true }),
      number(`skipY${i}`, { least: 0, most: 50, whole: true }),
    ],
  }));
  const die = (['dieX', 'dieY'] as const).map((field) => number(field, { unit: 'mm', least: 1e-3, most: 1000 }));
  return built({
    patterns,
    die: model.sites.die?.every((side, i) => side === die[i]) ? undefined : die,
    wafer: {
      diameter: number('diameter', { unit: 'mm', least: 1, most: 1000 }),
      edge: number('edge', { unit: 'mm', least: 0, most: 100 }),
    },
    fit: setup.fit,
  });
}

function sitesSetup(model: HeadModel): Setup {
  const { columns, rows, skip = [0, 0], die, probes } = model.sites;
  const along = columns >= rows ? 0 : 1;
  const size = die ?? sitePitch(model.sites);
  const [dieX, dieY] = size.map(fieldText);
  const hasRoom = (one: readonly number[]) => one[along] >= 0 && (one[along] + 1) * size[along] > probes.field[along];
  const skips = [skip, ...[-1, 1, 2].map((by) => skip.with(along, skip[along] + by)).filter(hasRoom)];
  const lines = skips.flatMap(([x, y], i) => Object.entries(patternFields(i, columns, rows, x, y)));
  const { length } = skips;
  return {
    ...Object.fromEntries(lines),
    ...{ patterns: String(length), dieX, dieY, diameter: '200', edge: '3', fit: 'follow' },
  };
}

/** Fields of a pattern of the list. */
export function patternFields(i: number, columns: number, rows: number, x: number, y: number): Setup {
  return {
    [`columns${i}`]: String(columns),
    [`rows${i}`]: String(rows),
    [`skipX${i}`]: String(x),
    [`skipY${i}`]: String(y),
  };
}
