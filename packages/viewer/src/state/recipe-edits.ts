import type { HeadModel } from '@flathead/solver';
import { type Fastener, type Frame, type LoadCase, type Rib, type Sites, sitePitch } from '@flathead/solver';
import { boxOf } from './shape-box.ts';

/** A new fastener beside the last one, under the first free name. */
export function withNewFastener(model: HeadModel): HeadModel {
  const { fasteners } = model;
  const names = new Set(fasteners.map(({ name }) => name));
  const last = fasteners.at(-1);
  const taken = new Set(fasteners.map(({ at }) => at.join()));
  let at: [number, number] = last ? [last.at[0], -last.at[1]] : [0, 0];
  for (let i = 0; taken.has(at.join()); i++) at = [(i % 2 === 0 ? 1 : -1) * 5 * Math.ceil((i + 1) / 2), at[1]];
  const { at: _, name: __, ...like } = last ?? { at, name: '', screw: 'M2.5' };
  const fastener: Fastener = { ...like, name: freeName('F', names), at };
  return { ...model, fasteners: [...fasteners, fastener] };
}

export function withoutFastener(model: HeadModel, index: number): HeadModel {
  return { ...model, fasteners: model.fasteners.filter((_, i) => i !== index) };
}

/** A frame that fits the body around the sites, to start from. */
export function withFrame(model: HeadModel, on: boolean): HeadModel {
  const { frame: _, ...bare } = model;
  if (!on) return bare;
  const [width, height] = boxOf(model.body.outline);
  const frame: Frame = {
    outer: model.body.outline,
    window: { rectangle: [Math.round(width * 0.72), Math.round(height * 0.6)], centre: model.sites.origin ?? [0, 0] },
    material: 'stainless-17-4',
    thickness: 4,
    side: 'board',
    join: 'sliding',
  };
  return { ...bare, frame };
}

/** Place of the ribs between columns, or rows, in the frame's list; -1 without. */
export function gapRibIndex(frame: Frame | undefined, between: 'columns' | 'rows'): number {
  return frame?.ribs?.findIndex((rib) => 'between' in rib && rib.between === between) ?? -1;
}

export function withGapRibs(model: HeadModel, between: 'columns' | 'rows', on: boolean): HeadModel {
  const { frame } = model;
  if (!frame) return model;
  const others = (frame.ribs ?? []).filter((rib) => !('between' in rib) || rib.between !== between);
  const like = (frame.ribs ?? []).find((rib) => 'between' in rib);
  const rib: Rib = { between, width: like?.width ?? gapWidth(model.sites, between) };
  const { ribs: _, ...bare } = frame;
  const ribs = on ? [...others, rib] : others;
  return { ...model, frame: ribs.length > 0 ? { ...bare, ribs } : bare };
}

/** About 60 % of the free width between the probe fields, on half millimetres. */
function gapWidth(sites: Sites, between: 'columns' | 'rows'): number {
  const axis = between === 'columns' ? 0 : 1;
  const gap = sitePitch(sites)[axis] - sites.probes.field[axis];
  return Math.max(0.5, Math.round(gap * 0.6 * 2) / 2);
}

/** The same pattern given by its pitch, or by die and skipped dies. */
export function withPitchInstead(model: HeadModel, byPitch: boolean): HeadModel {
  const { pitch: _, die: __, skip: ___, ...bare } = model.sites;
  const [px, py] = sitePitch(model.sites);
  const sites: Sites = byPitch ? { ...bare, pitch: [px, py] } : { ...bare, die: [px / 2, py / 2], skip: [1, 1] };
  return { ...model, sites };
}

/** Probe fields drilled with an array of holes, one for each probe, or counted as solid. */
export function withHoles(model: HeadModel, on: boolean): HeadModel {
  const { holes: _, ...bare } = model.sites.probes;
  const probes = on ? { ...bare, holes: likelyHoles(bare) } : bare;
  return { ...model, sites: { ...model.sites, probes } };
}

/** A square array that fills the field, on hundredths of a millimetre, with holes of 60 % of the pitch. */
function likelyHoles({ count, field: [width, height] }: Sites['probes']): NonNullable<Sites['probes']['holes']> {
  const pitch = Math.max(0.02, Math.floor(100 * Math.sqrt((width * height) / count)) / 100);
  return { pitch, diameter: Math.round(60 * pitch) / 100, pattern: 'square' };
}

export function withNewCase(model: HeadModel): HeadModel {
  const names = new Set(model.cases.map(({ name }) => name));
  const touched = names.has('all touched') ? freeName('case ', names) : 'all touched';
  const loadCase: LoadCase = { name: touched, touched: 'all' };
  return { ...model, cases: [...model.cases, loadCase] };
}

export function withoutCase(model: HeadModel, index: number): HeadModel {
  return { ...model, cases: model.cases.filter((_, i) => i !== index) };
}

function freeName(stem: string, names: ReadonlySet<string>): string {
  let i = 1;
  while (names.has(`${stem}${i}`)) i++;
  return `${stem}${i}`;
}
