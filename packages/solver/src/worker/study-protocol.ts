import type { FaultReport } from '../fault/fault.ts';
import type { HeadModel } from '../model/head-model.ts';
import type { PlacementRow, PlacementSummary } from '../studies/placement/rows.ts';
import type { SitesRow, SitesSummary } from '../studies/sites/sites.ts';
import type { SweepRow } from '../studies/sweep/row.ts';
import type { SweepSummary } from '../studies/sweep/sweep.ts';
import type { ToleranceRow } from '../studies/tolerance/row.ts';
import type { ToleranceSummary } from '../studies/tolerance/summary.ts';

/** Rows of the studies that a worker runs. */
export interface StudyRows {
  readonly placement: PlacementRow;
  readonly sweep: SweepRow;
  readonly tolerance: ToleranceRow;
  readonly sites: SitesRow;
}

/** What their rows say together. */
export interface StudySummaries {
  readonly placement: PlacementSummary;
  readonly sweep: SweepSummary;
  readonly tolerance: ToleranceSummary;
  readonly sites: SitesSummary;
}

export type StudyName = keyof StudyRows;
/** Studies whose rows are made in any order and in parts. */
export type RowStudyName = Exclude<StudyName, 'placement'>;

/** A study of a head. Plain, so that it goes to a worker. */
export interface StudyOrder<Name extends StudyName = StudyName> {
  readonly study: Name;
  readonly model: HeadModel;
  readonly plan: unknown;
}

/** What was asked for, or why there is none. */
export type OrFault<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: FaultReport };

/** Summary of rows and the study as text, JSON Lines as the command line writes them. */
export interface StudyEnd<Name extends StudyName = StudyName> {
  readonly summary: StudySummaries[Name] | null;
  readonly text: string;
}

/** Row of a placement, or of another study, as it is made. */
export type TellRow = (row: StudyRows[StudyName]) => void;

/**
 * Studies as a worker exposes them. Nothing is kept between calls, so that a worker may be ended at any time: the rows it
 * has told of are good.
 */
export interface StudyService {
  /** How many rows there are to make; null where that is not known before. */
  prepare(order: StudyOrder): Promise<OrFault<number | null>>;
  /** Makes rows, telling each; gives them all once more, as tellings may come later than the end. */
  rows(
    order: StudyOrder<RowStudyName>,
    indices: readonly number[],
    tell: TellRow,
  ): Promise<OrFault<readonly StudyRows[RowStudyName][]>>;
  /** Searches a placement, telling each row. */
  place(order: StudyOrder<'placement'>, tell: TellRow): Promise<OrFault<StudyEnd<'placement'>>>;
  /** @param isWhole whether the rows are all there are; of a part no limit is solved for */
  summarise(
    order: StudyOrder<RowStudyName>,
    rows: readonly StudyRows[RowStudyName][],
    isWhole: boolean,
  ): Promise<OrFault<StudyEnd<RowStudyName>>>;
  /** The head of a row, to be opened as a model. */
  variant(order: StudyOrder<RowStudyName>, row: StudyRows[RowStudyName]): Promise<OrFault<HeadModel>>;
}
