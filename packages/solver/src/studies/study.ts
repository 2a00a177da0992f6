import type { z } from 'zod';
import { Fault } from '../fault/fault.ts';

/** Studies there are. */
export const studyKinds = ['sweep', 'tolerance', 'budget', 'sites'] as const;

export type StudyKind = (typeof studyKinds)[number];

/** What every row of every study has: its place, from 0. */
export interface StudyRow {
  readonly index: number;
}

/** A part of a study: the rows whose index leaves `part - 1` when divided by `of`. */
export interface Part {
  /** From 1. */
  readonly part: number;
  readonly of: number;
}

/**
 * A study made ready: how many rows it has, and how to make any of them.
 *
 * A row depends on the model, the plan and its index alone, to the last digit: not on the rows made before it, on who makes
 * it, or on how the work is split. So rows can be made in any order and in parts.
 */
export interface Study<Row extends StudyRow = StudyRow, Summary extends object = object, Plan extends object = object> {
  readonly kind: StudyKind;
  /** Plain and complete, as it goes into the header. */
  readonly plan: Plan;
  /** Number of rows. */
  readonly total: number;
  /** Of a row read from a file. */
  readonly row: z.ZodType<Row>;
  /** Rows at ascending indices, each as soon as it is there. Neighbours reuse what they share. */
  rows(indices: Iterable<number>): Generator<Row, void, void>;
  /** What the rows say together; some may be missing. */
  summary(rows: readonly Row[]): Summary;
}

export interface StudyOptions {
  readonly part?: Part | undefined;
}

/** Runs a study, or a part of it: yields its rows and returns what they say together. */
export function* studySteps<Row extends StudyRow, Summary extends object>(
  study: Study<Row, Summary>,
  { part }: StudyOptions = {},
): Generator<Row, Summary, void> {
  const rows: Row[] = [];
  for (const row of study.rows(partIndices(study.total, part))) {
    rows.push(row);
    yield row;
  }
  return study.summary(rows);
}

/** Indices of a part, ascending; all of them without one. */
export function partIndices(total: number, part?: Part): number[] {
  const { part: first, of } = part ?? { part: 1, of: 1 };
  return Array.from({ length: Math.max(0, Math.ceil((total - first + 1) / of)) }, (_, k) => first - 1 + k * of);
}

/** Part of a text such as `2/4`. */
export function readPart(text: string): Part {
  const [, first, all] = /^(\d{1,6})\/(\d{1,6})$/.exec(text) ?? [];
  const [part, of] = [Number(first), Number(all)];
  if (!(part >= 1 && part <= of))
    throw new Fault('USAGE', `"${text}" is no part of a study. Write i/n with i from 1 to n, such as 2/4.`, '', {
      value: text,
      expected: 'i/n',
    });
  return { part, of };
}
