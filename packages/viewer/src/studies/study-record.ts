import type { FaultReport, HeadModel, StudyName, StudyRows, StudySummaries } from '@flathead/solver';

/** A study of this visit: what it was asked, the rows that are there, and what they say together. */
export interface StudyRecord<Name extends StudyName = StudyName> {
  readonly study: Name;
  /** The head that it was run on, as it was then. */
  readonly model: HeadModel;
  readonly plan: Readonly<Record<string, unknown>>;
  /** When it was started, ms of the page. */
  readonly since: number;
  /** By index, ascending. */
  readonly rows: readonly StudyRows[Name][];
  /** Rows to come in all; null where that is not known. */
  readonly total: number | null;
  /** `ending`: the rows are there, what they say together is not. */
  readonly state: 'running' | 'ending' | 'done' | 'stopped' | 'refused';
  readonly summary: StudySummaries[Name] | null;
  /** JSON Lines, once it ended. */
  readonly text: string | null;
  /** Why it was refused or ended early. */
  readonly fault: FaultReport | null;
}

export type StudyRecords = { readonly [Name in StudyName]?: StudyRecord<Name> };

export function isBusy(record: StudyRecord | undefined): boolean {
  return record?.state === 'running' || record?.state === 'ending';
}
