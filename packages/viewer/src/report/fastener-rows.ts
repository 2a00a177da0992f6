import type { HeadModel, HeadResult } from '@flathead/solver';
import { fastenerForce, forceDigits } from '../format/number.ts';
import type { NumberRows } from '../format/number-rows.ts';
import { caseChunks, FEW_CASES, worstOfEach } from './case-columns.ts';
import { coordinate, NONE } from './cells.ts';
import type { FastenerSummary, InCase } from './fastener-summary.ts';
import { plain } from './shape-words.ts';

/** Where the fasteners are and how far from everything else: what the board needs. */
export function placeRows(summaries: readonly FastenerSummary[], model: HeadModel): NumberRows {
  const keepOuts = (model.keepOuts ?? []).length > 0;
  return {
    columns: [
      ...['Fastener', 'x, mm', 'y, mm', 'Screw', 'To probe field, mm'],
      ...(keepOuts ? ['To keep-out, mm', 'Asked for, mm'] : []),
      'Stiffness, N/mm',
    ],
    rows: summaries.map(({ fastener, stiffness, keepOut, site }) => [
      ...[fastener.name, coordinate(fastener.at[0]), coordinate(fastener.at[1]), screwWords(fastener)],
      `${distance(site.gap)} (${site.name})`,
      ...(keepOuts
        ? keepOut === null
          ? [NONE, NONE]
          : [`${distance(keepOut.gap)} (${keepOut.name})${keepOut.short ? ', short' : ''}`, clearanceOf(model, keepOut)]
        : []),
      stiffnessDigits(fastener, stiffness),
    ]),
  };
}

/** What each fastener carries in its worst case, and what that leaves of its joint where any has a preload. */
export function holdRows(summaries: readonly FastenerSummary[]): NumberRows {
  const joints = summaries.some(({ proof }) => proof !== null);
  return {
    columns: [
      ...['Fastener', 'Holds at most, N', 'In case'],
      ...(joints ? ['Preload', 'Clamp left, N', 'Proof load used, %', 'Screw margin, %', 'Thread used, %'] : []),
    ],
    rows: summaries.map(({ fastener, holdsBack, letsGo, clampLeft, proof, thread, opens }) => [
      fastener.name,
      letsGo ? `${forceDigits(holdsBack.value)}, lets go` : forceDigits(holdsBack.value),
      holdsBack.caseName,
      ...(joints
        ? [
            preloadWords(fastener),
            clampLeft === null ? NONE : `${forceDigits(clampLeft.value)}${opens ? ', opens' : ''}`,
            percent(proof),
            proof === null ? NONE : plain(Math.round(100 * (1 - proof.value))),
            percent(thread),
          ]
        : []),
    ]),
  };
}

/** What every fastener does to the head in each of few cases, N, and the most that it holds; `null` with more cases. */
export function forceRows(
  result: HeadResult,
  model: HeadModel,
  summaries: readonly FastenerSummary[],
): NumberRows | null {
  const [reactions, ...more] = reactionRows(result, model);
  if (reactions === undefined || more.length > 0 || reactions.columns.length > FEW_CASES + 1) return null;
  return {
    columns: [...reactions.columns, 'Holds at most', 'In case'],
    rows: reactions.rows.map((row, i) => {
      const { holdsBack, letsGo } = summaries[i];
      return [...row, `${forceDigits(holdsBack.value)}${letsGo ? ', lets go' : ''}`, holdsBack.caseName];
    }),
  };
}

/** What every fastener does to the head in every case, N; several tables where the cases need them. */
export function reactionRows({ cases }: HeadResult, model: HeadModel): NumberRows[] {
  const shown = worstOfEach(cases);
  return caseChunks(shown).map((part) => ({
    columns: ['Fastener', ...part.map(({ name }) => name)],
    rows: model.fasteners.map(({ name }, i) => [name, ...part.map(({ fasteners }) => fastenerForce(fasteners[i]))]),
  }));
}

function screwWords({ screw, grade, bearing, acts }: FastenerSummary['fastener']): string {
  const parts = [screw, grade, bearing === undefined ? undefined : `bearing Ø ${plain(bearing)}`];
  const way = acts === 'pull' || acts === 'push' ? `${acts} only` : undefined;
  return [...parts, way].filter((part) => part !== undefined).join(', ') || NONE;
}

function preloadWords({ preload, torque }: FastenerSummary['fastener']): string {
  if (preload !== undefined) return `${plain(preload)} N`;
  return torque === undefined ? 'none given' : `${plain(torque)} N mm`;
}

function clearanceOf(model: HeadModel, { name }: { readonly name: string }): string {
  return plain(model.keepOuts?.find((other) => other.name === name)?.clearance ?? 0);
}

function distance(value: number): string {
  return value.toFixed(2).replace('-', '\u2212');
}

/** As it was entered, or to three figures where it is an estimate. */
export function stiffnessDigits({ stiffness: given }: FastenerSummary['fastener'], stiffness: number | null): string {
  if (stiffness === null) return 'rigid';
  return typeof given === 'number' ? plain(given) : plain(Number(stiffness.toPrecision(3)));
}

function percent(share: InCase | null): string {
  return share === null ? NONE : (100 * share.value).toFixed(share.value >= 0.1 ? 0 : 1);
}
