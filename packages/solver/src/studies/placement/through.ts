import { Fault } from '../../fault/fault.ts';
import { headDiameter } from '../../model/keep-outs.ts';
import type { HeadField } from './head-field.ts';
import { openGrid } from './open-grid.ts';
import type { Placement } from './placement.ts';
import type { GroupPlan, PlacementPlan } from './plan.ts';
import { hasPlacement } from './search.ts';
import type { Settings } from './task.ts';

/**
 * The field itself where its part has room for all groups under their mirrors with the spacing between them; else one of
 * body and frame.
 *
 * @throws Fault TOO_LARGE for too fine a grid
 */
export function roomyField(
  field: HeadField,
  settings: Settings,
  clearance: number,
  groups: readonly GroupPlan[],
): HeadField {
  const hasRoom = (): boolean => {
    try {
      const { points, spacing, orbits } = openGrid(field, settings, clearance);
      const choices = groups.map(({ count, mirror }) => ({ count, orbits: orbits(mirror) }));
      return hasPlacement(choices, points, { ...settings, spacing });
    } catch (thrown) {
      if (thrown instanceof Fault && thrown.code === 'OUTSIDE') return false;
      throw thrown;
    }
  };
  return hasRoom() ? field : { ...field, through: 'either', room: field.roomThrough('either') };
}

/** Which part screws go through, and how near its edge: one sentence each. */
export function throughRemarks(
  field: HeadField,
  { through: asked, spacing = 0 }: PlacementPlan,
  placed: Placement,
): string[] {
  const isAsked = asked !== undefined;
  const apart = spacing > 0 ? ` at least ${spacing} mm apart` : '';
  const reach = headDiameter(field.like) / 2;
  const through = placed
    .map(({ name, at }) => ({ name, gap: field.partsAt(at).body - reach }))
    .filter(({ gap }) => gap + reach >= 0);
  const nearest = through.reduce((least, { gap }) => Math.min(least, gap), Infinity);
  const names = through.map(({ name }) => name);
  const listed = names.length === 1 ? `${names[0]} goes` : `${names.slice(0, -1).join(', ')} and ${names.at(-1)} go`;
  return [
    ...(field.through === 'frame'
      ? [
          isAsked
            ? 'Screws go through the frame alone, clear of the body.'
            : 'Screws go through the frame alone, clear of the body; they might do better where they may go through the body too.',
        ]
      : []),
    ...(field.through === 'either' && !isAsked && placed.some(({ at }) => Number.isFinite(field.partsAt(at).frame))
      ? [`The frame alone has no room for all of them${apart}, so they may go through the body too.`]
      : []),
    ...(through.length === 0 || !Number.isFinite(nearest)
      ? []
      : [
          `${listed} through the body, with ${nearest.toFixed(2)} mm from screw head to the edge of the body at least.`,
        ]),
  ];
}
