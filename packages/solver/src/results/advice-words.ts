import type { HeadModel } from '../model/head-model.ts';
import { micrometreMargin, micrometres } from './criteria/criterion.ts';
import type { CriterionVerdict } from './head-result.ts';
import type { InwardMove } from './inward-moves.ts';

interface Told {
  /** What is done, without a capital. */
  readonly what: string;
  readonly value: number;
  readonly gain: number;
  readonly within: boolean;
}

/** What it gains and what to do: `-47.4 um, within the limit: moving fasteners W and E 4 mm inwards along x.` */
export function sentenceOf({ what, value, gain, within }: Told, now: CriterionVerdict): string {
  const worth = within
    ? ', within the limit'
    : now.value <= now.limit
      ? ', not quite enough'
      : value <= now.limit
        ? `, ${micrometreMargin(value, now.limit)} inside the limit, marginal`
        : ` of the ${micrometreMargin(now.value, now.limit)} needed`;
  return `-${micrometres(gain)}${worth}: ${what}.`;
}

/** `null` where something suffices. */
export function conclusionOf(
  moves: readonly { readonly within: boolean }[],
  { limit }: CriterionVerdict,
  least: number,
): string | null {
  if (moves.some(({ within }) => within)) return null;
  const which = moves.length === 1 ? 'This is not enough' : 'None of these is enough, alone or together';
  return moves.length > 0
    ? `${which}: change more of the design.`
    : `Neither fasteners further in, ribs, a frame nor more thickness gains even ${100 * least} % of the limit, ${micrometres(least * limit)}.`;
}

/** `moving fasteners W and E 4 mm inwards along x` */
export function moveWords(
  before: HeadModel['fasteners'],
  after: HeadModel['fasteners'],
  { along }: InwardMove,
  by: number,
): string {
  const names = after.filter((fastener, i) => fastener !== before[i]).map(({ name }) => name);
  const who =
    names.length === before.length && names.length > 2
      ? `all ${names.length} fasteners`
      : `${names.length === 1 ? 'fastener' : 'fasteners'} ${listed(names)}`;
  return `moving ${who} ${by} mm ${along === 'sites' ? 'straight towards the sites' : `inwards along ${along}`}`;
}

/** `moving all 4 fasteners 2 mm inwards along x and a body 1 mm thicker (5 mm) together` */
export function togetherWords(told: readonly Pick<Told, 'what'>[]): string {
  return `${listed(told.map(({ what }) => what))} together`;
}

function listed(names: readonly string[]): string {
  return names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
