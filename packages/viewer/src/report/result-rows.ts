import type { CaseResult, CriterionVerdict, HeadModel, HeadResult } from '@flathead/solver';
import { CRITERION_NAMES, criterionDigits, criterionLimit, criterionUnit } from '../format/criterion-text.ts';
import { fastenerForce, forceDigits, micrometreDigits, signedMicrometres, stressDigits } from '../format/number.ts';
import type { NumberRows } from '../format/number-rows.ts';
import { caseGroups } from '../state/case-groups.ts';
import { caseWords } from './facts.ts';
import type { FastenerSummary, InCase } from './fastener-summary.ts';
import { plain } from './shape-words.ts';

const NONE = '\u2013';
/** Sites beyond this are left out, the smallest bows first. */
const MOST_SITES = 400;
/** Columns of cases that one table of a page has room for. */
const MOST_CASES = 6;

/** Each criterion with its error, limit and place. */
export function criterionRows(criteria: readonly CriterionVerdict[]): NumberRows {
  return {
    columns: ['Criterion', 'value', 'numerical error', 'limit', 'worst at', 'in case', 'outcome'],
    rows: criteria.map((criterion) => {
      const { error, bound, site, mode, outcome } = criterion;
      const unit = criterionUnit(criterion);
      const withUnit = (digits: string) => `${digits} ${unit}`.trim();
      return [
        CRITERION_NAMES[criterion.criterion],
        withUnit(criterionDigits(criterion.value, criterion)),
        error === null ? 'not estimated' : `±${withUnit(errorDigits(error, criterion))}`,
        `${bound === 'most' ? 'at most' : 'at least'} ${withUnit(criterionLimit(criterion))}`,
        mode === undefined ? site : `${site}, ${mode}`,
        criterion.case,
        outcome,
      ];
    }),
  };
}

/** Below a hundredth of a micrometre, of a newton or of one an estimate says nothing. */
function errorDigits(error: number, criterion: CriterionVerdict): string {
  const least = criterion.unit === 'mm' ? 5e-6 : 0.005;
  if (criterion.criterion !== 'failureProbability' && Math.abs(error) < least) return '0.01';
  return criterionDigits(criterion.unit === 'mm' ? error : Number(error.toPrecision(2)), criterion);
}

/** The cases of the model with what the worst of each does; one line for all touchdowns of a wafer. */
export function caseRows({ cases: given }: HeadModel, { cases }: HeadResult): NumberRows {
  return {
    columns: ['Case', 'state', 'load, N', 'largest bow, µm', 'at site', 'flatness, µm', 'tilt, µm in 100 mm'],
    rows: caseGroups(cases).map(({ name, cases: members }) => {
      const [worst] = members;
      const state = given.find((other) => other.name === name);
      return [
        members.length > 1 ? `${name} (${members.length}, worst ${worst.name.slice(name.length + 2)})` : name,
        state === undefined ? NONE : caseWords(state),
        forceDigits(worst.load),
        signedMicrometres(worst.bow.value),
        bowPlace(worst.bow),
        micrometreDigits(worst.flatness.minimumZone),
        micrometreDigits(worst.tilt.slope * 100),
      ];
    }),
  };
}

/** The site of a bow, where there is any. */
export function bowPlace({ value, site }: CaseResult['bow']): string {
  return Number(micrometreDigits(value)) === 0 ? NONE : site;
}

/** Where the fasteners are and how far from everything else: what the board needs. */
export function placeRows(summaries: readonly FastenerSummary[], model: HeadModel): NumberRows {
  const keepOuts = (model.keepOuts ?? []).length > 0;
  return {
    columns: [
      ...['Fastener', 'x, mm', 'y, mm', 'screw', 'to probe field, mm'],
      ...(keepOuts ? ['to keep-out, mm', 'asked for, mm'] : []),
      'stiffness, N/mm',
    ],
    rows: summaries.map(({ fastener, stiffness, keepOut, site }) => [
      ...[fastener.name, coordinate(fastener.at[0]), coordinate(fastener.at[1]), screwWords(fastener)],
      `${distance(site.gap)} (${site.name})`,
      ...(keepOuts
        ? keepOut === null
          ? [NONE, NONE]
          : [`${distance(keepOut.gap)} (${keepOut.name})${keepOut.short ? ', short' : ''}`, clearanceOf(model, keepOut)]
        : []),
      stiffness === null ? 'rigid' : Number(stiffness.toPrecision(3)).toFixed(0),
    ]),
  };
}

/** What each fastener carries in its worst case, and what that leaves of its joint where any has a preload. */
export function holdRows(summaries: readonly FastenerSummary[]): NumberRows {
  const joints = summaries.some(({ proof }) => proof !== null);
  return {
    columns: [
      ...['Fastener', 'holds at most, N', 'in case'],
      ...(joints ? ['preload', 'clamp left, N', 'proof load used, %', 'screw margin, %', 'thread used, %'] : []),
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

/** Most cases that leave room for what else is told of each fastener or site. */
const FEW_CASES = 4;

/** What every fastener does to the head in each of few cases, N, and the most that it holds; `null` with more cases. */
export function forceRows(
  result: HeadResult,
  model: HeadModel,
  summaries: readonly FastenerSummary[],
): NumberRows | null {
  const [reactions, ...more] = reactionRows(result, model);
  if (reactions === undefined || more.length > 0 || reactions.columns.length > FEW_CASES + 1) return null;
  return {
    columns: [...reactions.columns, 'holds at most', 'in case'],
    rows: reactions.rows.map((row, i) => {
      const { holdsBack, letsGo } = summaries[i];
      return [...row, `${forceDigits(holdsBack.value)}${letsGo ? ', lets go' : ''}`, holdsBack.caseName];
    }),
  };
}

/** What every fastener does to the head in every case, N; several tables where the cases need them. */
export function reactionRows({ cases }: HeadResult, model: HeadModel): NumberRows[] {
  const shown = worstOfEach(cases);
  return chunks(shown).map((part) => ({
    columns: ['Fastener', ...part.map(({ name }) => name)],
    rows: model.fasteners.map(({ name }, i) => [name, ...part.map(({ fasteners }) => fastenerForce(fasteners[i]))]),
  }));
}

/** Bow of every site in every case, µm, and its own flatness in the worst; several tables where the cases need them. */
export function bowRows({ cases, sites }: HeadResult): { readonly tables: NumberRows[]; readonly left: number } {
  const shown = worstOfEach(cases);
  const worst = cases.reduce((a, b) => (Math.abs(b.bow.value) > Math.abs(a.bow.value) ? b : a));
  const size = (i: number) => Math.max(...shown.map((result) => Math.abs(result.sites[i].bow)));
  const order = sites.map((_, i) => i);
  const kept =
    sites.length > MOST_SITES
      ? order
          .toSorted((a, b) => size(b) - size(a))
          .slice(0, MOST_SITES)
          .sort((a, b) => a - b)
      : order;
  const tables = chunks(shown).map((part, k) => ({
    columns: [
      ...['Site', 'x, mm', 'y, mm', ...part.map(({ name }) => name)],
      ...(k === 0 ? ['flatness of its own, µm'] : []),
    ],
    rows: kept.map((i) => [
      ...[sites[i].name, coordinate(sites[i].centre[0]), coordinate(sites[i].centre[1])],
      ...part.map((result) => signedMicrometres(result.sites[i].bow)),
      ...(k === 0 ? [micrometreDigits(worst.sites[i].flatness)] : []),
    ]),
  }));
  return { tables, left: sites.length - kept.length };
}

/** Bow and contact force side by side, where there is room for both; else `null`. */
export function siteRows(result: HeadResult): NumberRows | null {
  const { tables, left } = bowRows(result);
  const contact = contactRows(result);
  const few = worstOfEach(result.cases).length <= FEW_CASES;
  if (contact === null || tables.length > 1 || left > 0 || !few) return null;
  return {
    columns: [...tables[0].columns, ...contact.columns.slice(1)],
    rows: tables[0].rows.map((row, i) => [
      ...row,
      ...contact.rows[i].slice(1).map((cell) => cell.replace(/ \(.*\)$/, '')),
    ]),
  };
}

/** Least contact force of every site over all cases, N; `null` where the model does not give the spring rate. */
export function contactRows({ cases, sites }: HeadResult): NumberRows | null {
  if (cases.every((result) => result.sites.every(({ contact }) => contact === undefined))) return null;
  const least = (i: number, end: 'board' | 'device'): string => {
    const known = cases.flatMap(({ name, sites: results }) => {
      const force = results[i].contact?.[end];
      return force ? [{ name, force }] : [];
    });
    if (known.length === 0) return NONE;
    const { name, force } = known.reduce((a, b) => (b.force.minimum < a.force.minimum ? b : a));
    return `${contactDigits(force.minimum)} (${name})`;
  };
  return {
    columns: ['Site', 'least at the board, N', 'least at the device, N'],
    rows: sites.slice(0, MOST_SITES).map(({ name }, i) => [name, least(i, 'board'), least(i, 'device')]),
  };
}

/** Largest stress of body and frame over all cases. */
export function strengthRows({ cases }: HeadResult): NumberRows | null {
  const rows = (['body', 'frame'] as const).flatMap((part) => {
    const found = cases.flatMap(({ name, strength }) =>
      (strength?.parts ?? []).filter((other) => other.part === part).map((other) => ({ name, ...other })),
    );
    if (found.length === 0) return [];
    const worst = found.reduce((a, b) => (b.stress > a.stress ? b : a));
    const { measure, stress, fastener, near, face, strength, factor, failureProbability, name } = worst;
    return [
      [
        `${part}, ${measure === 'principal' ? 'tension' : measure}`,
        stressDigits(stress),
        fastener === null ? `near ${near}, ${face} side` : `bearing of ${fastener}`,
        name,
        strength === null ? NONE : stressDigits(strength),
        factor === null ? NONE : stressDigits(factor),
        failureProbability === null ? NONE : failureProbability.toExponential(1).replace('-', '\u2212'),
      ],
    ];
  });
  if (rows.length === 0) return null;
  return {
    columns: ['Part', 'stress, MPa', 'where', 'in case', 'strength, MPa', 'factor', 'fails with'],
    rows,
  };
}

/** The worst of each case of the model: those over a wafer would fill the report. */
export function worstOfEach(cases: readonly CaseResult[]): CaseResult[] {
  return caseGroups(cases).map(({ cases: members }) => members[0]);
}

function chunks(cases: readonly CaseResult[]): CaseResult[][] {
  const parts: CaseResult[][] = [];
  for (let i = 0; i < cases.length; i += MOST_CASES) parts.push(cases.slice(i, i + MOST_CASES));
  return parts;
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

function coordinate(value: number): string {
  const short = value.toFixed(2);
  return (Math.abs(Number(short) - value) < 1e-9 ? short : String(Number(value.toFixed(6)))).replace('-', '\u2212');
}

function distance(value: number): string {
  return value.toFixed(2).replace('-', '\u2212');
}

function percent(share: InCase | null): string {
  return share === null ? NONE : (100 * share.value).toFixed(share.value >= 0.1 ? 0 : 1);
}

/** Forces of one probe are small. */
function contactDigits(force: number): string {
  return force.toFixed(force >= 1 ? 2 : 3);
}
