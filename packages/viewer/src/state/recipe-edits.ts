import type { HeadModel } from '@flathead/solver';
import { type Fastener, type Frame, type LoadCase, type Rib, type Seat, type Sites, sitePitch } from '@flathead/solver';
import { boxOf } from './shape-box.ts';

/** What a seat starts with: N/mm3 of each mm2, or N/mm of the whole. */
const START = { modulus: 1000, stiffness: 10000 };

/** A new fastener beside the last one, under the first free name. */
export function withNewFastener(model: HeadModel): HeadModel {
  const { fasteners } = model;
  const names = new Set(fasteners.map(({ name }) => name));
  const last = fasteners.at(-1);
  const taken = new Set(fasteners.map(({ at }) => at.join()));
  let at: [number, number] = last ? [last.at[0], -last.at[1]] : [0, 0];
  for (let i = 0; taken.has(at.join()); i++) at = [(i % 2 === 0 ? 1 : -1) * 5 * Math.ceil((i + 1) / 2), at[1]];
  const { at: _, name: __, height: ___, ...like }: Fastener = last ?? { at, name: '', screw: 'M2.5' };
  const fastener: Fastener = { ...like, name: freeName('F', names), at };
  return { ...model, fasteners: [...fasteners, fastener] };
}

/** Every other fastener with the screw and joint of one of them; names, places and measured heights stay. */
export function withFastenersLike(model: HeadModel, index: number): HeadModel {
  const { name: _, at: __, height: ___, ...like } = model.fasteners[index];
  return {
    ...model,
    fasteners: model.fasteners.map(({ name, at, height }) => ({
      ...like,
      name,
      at,
      ...(height === undefined ? {} : { height }),
    })),
  };
}

export function withoutFastener(model: HeadModel, index: number): HeadModel {
  return { ...model, fasteners: model.fasteners.filter((_, i) => i !== index) };
}

/** A new pad of the board under the head: round, 4 mm across, beside the last one, or where the body is widest. */
export function withNewSeat(model: HeadModel): HeadModel {
  const seats = model.seats ?? [];
  const [width] = boxOf(model.body.outline);
  const last = seats.at(-1);
  const where = last === undefined ? null : 'at' in last ? last.at : 'centre' in last.shape ? last.shape.centre : null;
  const at: [number, number] = where ? [-where[0], where[1]] : [Math.round(width / 2 - 4), 0];
  const name = freeName('S', new Set(seats.map((seat) => seat.name)));
  return { ...model, seats: [...seats, { name, at, diameter: 4, modulus: START.modulus }] };
}

export function withoutSeat(model: HeadModel, index: number): HeadModel {
  const { seats = [], ...bare } = model;
  const left = seats.filter((_, i) => i !== index);
  return left.length > 0 ? { ...bare, seats: left } : bare;
}

/** The seat round or rectangular, about the same place and as wide. */
export function withSeatForm(model: HeadModel, index: number, form: 'round' | 'rectangle'): HeadModel {
  const reshaped = (seat: Seat): Seat => {
    const { name, modulus, stiffness, acts } = seat;
    const bedding = {
      name,
      ...(modulus === undefined ? {} : { modulus }),
      ...(stiffness === undefined ? {} : { stiffness }),
      ...(acts === undefined ? {} : { acts }),
    };
    const [width, height, at] = seatBox(seat);
    return form === 'round'
      ? { ...bedding, at, diameter: width }
      : { ...bedding, shape: { rectangle: [width, height], centre: at } };
  };
  return { ...model, seats: (model.seats ?? []).map((seat, i) => (i === index ? reshaped(seat) : seat)) };
}

function seatBox(seat: Seat): readonly [width: number, height: number, at: [number, number]] {
  if ('at' in seat) return [seat.diameter, seat.diameter, seat.at];
  const { shape } = seat;
  const centre: [number, number] = 'polygon' in shape ? [0, 0] : (shape.centre ?? [0, 0]);
  return 'rectangle' in shape ? [...shape.rectangle, centre] : [...boxOf(shape), centre];
}

/** The bedding of a seat by what each mm2 has, or by the whole of it; the other is left out. */
export function withSeatStiffness(model: HeadModel, index: number, by: 'modulus' | 'stiffness'): HeadModel {
  const rebedded = ({ modulus, stiffness, ...bare }: Seat): Seat =>
    by === 'modulus'
      ? { ...bare, modulus: modulus ?? START.modulus }
      : { ...bare, stiffness: stiffness ?? START.stiffness };
  return { ...model, seats: (model.seats ?? []).map((seat, i) => (i === index ? rebedded(seat) : seat)) };
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

/** Diameter of a bore over the pitch, at most. */
const WIDEST_BORE = 0.8;

/** Probe fields drilled with an array of holes, one for each probe, or counted as solid. */
export function withHoles(model: HeadModel, on: boolean): HeadModel {
  const { holes: _, ...bare } = model.sites.probes;
  const probes = on ? { ...bare, holes: likelyHoles(bare) } : bare;
  return { ...model, sites: { ...model.sites, probes } };
}

/** Holes with a wider step on the board face, a quarter of the body deep, or straight. */
export function withCounterbore(model: HeadModel, on: boolean): HeadModel {
  const { holes } = model.sites.probes;
  if (holes === undefined) return model;
  const { counterbore: _, ...straight } = holes;
  // As wide as constants are known for at most, if a quarter wider than the hole is more.
  const diameter = Math.min(1.25 * holes.diameter, WIDEST_BORE * holes.pitch);
  const counterbore = { diameter, depth: model.body.thickness / 4, side: 'board' as const };
  const stepped = on ? { ...straight, counterbore } : straight;
  return { ...model, sites: { ...model.sites, probes: { ...model.sites.probes, holes: stepped } } };
}

/** Meshed to an error of a hundredth of the limits, or as usual. */
export function withTolerance(model: HeadModel, on: boolean): HeadModel {
  const { mesh: _, ...bare } = model;
  return on ? { ...bare, mesh: { tolerance: 0.01 } } : bare;
}

/** Meshed with elements of a size to start from, or as usual. */
export function withElementSize(model: HeadModel, on: boolean): HeadModel {
  const { mesh: _, ...bare } = model;
  return on
    ? { ...bare, mesh: { size: Math.max(0.5, Math.round(Math.max(...boxOf(model.body.outline)) / 6) / 10) } }
    : bare;
}

/** Probes that give way as the head bows, or push with their whole preload. */
export function withRelaxing(model: HeadModel, on: boolean): HeadModel {
  const { relax: _, ...bare } = model.sites.probes;
  return { ...model, sites: { ...model.sites, probes: on ? { ...bare, relax: true } : bare } };
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
