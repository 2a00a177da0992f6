import type { HeadModel, Point } from '@flathead/solver';
import { seatHeight } from '../buffers/seat-height.ts';
import { fastenerEdit } from './fastener-moves.ts';
import { keepOutEdit, shapeCorners, shapeMiddle } from './keep-out-edit.ts';
import { type MirrorAxes, mirrorAxesOf } from './mirror.ts';
import { type NoticeStore, notify } from './notice-store.ts';
import { pitchCorner, pitchEdit } from './pitch-edit.ts';
import { ribEdit, ribWidthEdit } from './rib-edit.ts';
import { acrossOf, middleOf, ribLines } from './rib-lines.ts';
import { beginMove, type StageMove } from './stage-move.ts';
import type { Workbench } from './workbench.ts';

/** A place on the stage by which a thing of the head is held, other than a fastener. */
export interface Grip {
  /** `rib 0`, `rib 0 from`, `rib 0 edge`, `pitch`, `keepOut 0`, `keepOut 0 corner 2` */
  readonly key: string;
  readonly form: 'whole' | 'end' | 'edge' | 'corner' | 'pitch';
  /** For those who do not see it. */
  readonly name: string;
  readonly at: Point;
  /** Height at rest, mm. */
  readonly z: number;
  /** Whether it moves with the head as that bows. */
  readonly hangs: boolean;
  /** Where a wish for 1 mm more along x, and along y, takes it; by that itself if left out. */
  readonly nudge?: readonly [Point, Point];
}

/** Key of the whole thing that a grip belongs to: `rib 0` of `rib 0 from`. */
export function thingOf(key: string): string {
  return key.split(' ').slice(0, 2).join(' ');
}

/** Index in the list of its kind that a key names. */
export function indexOf(key: string): number {
  return Number(key.split(' ')[1]);
}

/** Every grip of a model; ends, edges and corners of the chosen thing alone. @param chosen key of a grip */
export function gripsOf(model: HeadModel, chosen: string | null): Grip[] {
  const thing = chosen === null ? null : thingOf(chosen);
  return [...pitchGrip(model), ...ribGrips(model, thing), ...keepOutGrips(model, thing)];
}

function pitchGrip(model: HeadModel): Grip[] {
  const at = pitchCorner(model);
  if (at === null) return [];
  const { columns, rows } = model.sites;
  const nudge = [
    [(columns - 1) / 2, 0],
    [0, (rows - 1) / 2],
  ] as const;
  return [{ key: 'pitch', form: 'pitch', name: 'Site pitch', at, z: model.body.thickness / 2, hangs: true, nudge }];
}

function ribGrips(model: HeadModel, thing: string | null): Grip[] {
  return (model.frame?.ribs ?? []).flatMap((rib, i): Grip[] => {
    const lines = ribLines(model, rib);
    if (lines.length === 0) return [];
    // Of the ribs in several gaps the one nearest the middle is held.
    const line = lines[Math.floor((lines.length - 1) / 2)];
    const key = `rib ${i}`;
    const middle = middleOf(line);
    const [nx, ny] = acrossOf(line);
    const z = ribFace(model, middle, rib.thickness);
    // Of a rib of its own half way to its start, clear of the grip in the middle.
    const held = 'from' in rib ? middleOf({ from: line.from, to: middle }) : middle;
    const edge: Grip = {
      key: `${key} edge`,
      form: 'edge',
      name: 'between' in rib ? `Width of the ribs between ${rib.between}` : `Width of rib ${i + 1}`,
      at: [held[0] + (nx * rib.width) / 2, held[1] + (ny * rib.width) / 2],
      z,
      hangs: true,
      nudge: [
        [nx / 2, ny / 2],
        [nx / 2, ny / 2],
      ],
    };
    if ('between' in rib) return [edge];
    const grip = (form: 'whole' | 'end', suffix: string, name: string, at: Point): Grip => ({
      key: key + suffix,
      form,
      name,
      at,
      z,
      hangs: true,
    });
    const whole = grip('whole', '', `Rib ${i + 1}`, middle);
    if (thing !== key) return [whole];
    return [
      whole,
      grip('end', ' from', `Start of rib ${i + 1}`, line.from),
      grip('end', ' to', `End of rib ${i + 1}`, line.to),
      edge,
    ];
  });
}

/** Height of the face on which a rib is seen: its own, or that of the body that hides it. */
function ribFace({ body, frame }: HeadModel, at: Point, thickness = frame?.thickness ?? 0): number {
  const half = body.thickness / 2;
  if (frame?.side === 'device') return half + thickness;
  if (frame?.side === 'level') return half + thickness / 2;
  return seatHeight({ body, ...(frame && { frame }) }, at);
}

function keepOutGrips(model: HeadModel, thing: string | null): Grip[] {
  return (model.keepOuts ?? []).flatMap(({ name, shape }, i): Grip[] => {
    const key = `keepOut ${i}`;
    const at = shapeMiddle(shape);
    const z = seatHeight(model, at);
    const whole: Grip = { key, form: 'whole', name: `Keep-out ${name}`, at, z, hangs: false };
    if (thing !== key) return [whole];
    const corners = shapeCorners(shape).map(
      (corner, k): Grip => ({
        key: `${key} corner ${k}`,
        form: 'corner',
        name: 'circle' in shape ? `Rim of keep-out ${name}` : `Corner ${k + 1} of keep-out ${name}`,
        at: corner,
        z,
        hangs: false,
      }),
    );
    return [whole, ...corners];
  });
}

/** Begins to move what a key names, fasteners included, mirrored as the page is set. */
export function beginGrip(
  bench: Pick<Workbench, 'head' | 'history' | 'pointer' | 'view' | 'notices'>,
  key: string,
): StageMove {
  const { model } = bench.head.getState();
  const move = beginMove(bench, key, editOf(model, key, mirrorAxesOf(bench.view.getState().mirror, model)));
  if (key !== 'pitch' || model.sites.pitch !== undefined) return move;
  return {
    ...move,
    end: () => {
      move.end();
      if (bench.head.getState().model.sites.pitch !== undefined) tellOfPitch(bench.notices, model);
    },
  };
}

function tellOfPitch(notices: NoticeStore, { sites: { die, skip } }: HeadModel): void {
  if (die === undefined || skip === undefined) return;
  notify(notices, {
    tone: 'info',
    title: 'Sites are spaced by pitch now',
    text: `They were spaced by skipped dies: ${skip[0]} \u00d7 ${skip[1]} dies of ${die[0]} \u00d7 ${die[1]} mm, which allows whole dies only. Undo brings that back.`,
  });
}

function editOf(model: HeadModel, key: string, axes: MirrorAxes | null) {
  const [kind, , part, corner] = key.split(' ');
  const index = indexOf(key);
  if (kind === 'fastener') return fastenerEdit(model, index, axes);
  if (kind === 'pitch') return pitchEdit(model);
  if (kind === 'keepOut') return keepOutEdit(model, index, part === 'corner' ? Number(corner) : null, axes);
  if (part === 'edge') return ribWidthEdit(model, index);
  return ribEdit(model, index, part === 'from' || part === 'to' ? part : 'whole', axes);
}
