import type { StudyName, StudyRows, TellRow } from '@flathead/solver';

type Row = StudyRows[StudyName];

/** Rows are shown in batches, ms. */
const BATCH = 100;

/** Rows of a study as they are told, in any order and some of them twice. */
export interface GatheredRows {
  readonly tell: TellRow;
  /** By index, ascending. */
  sorted(): Row[];
  /** Shows at once what is there. */
  flush(): void;
}

/**
 * @param isWanted false once the study is over: what is told then is passed over
 * @param show told all rows by index, at most every tenth of a second
 */
export function gatherRows(isWanted: () => boolean, show: (rows: Row[]) => void): GatheredRows {
  const rows = new Map<number, Row>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const sorted = (): Row[] => [...rows.values()].sort((a, b) => a.index - b.index);
  const flush = (): void => {
    clearTimeout(timer);
    timer = undefined;
    if (isWanted()) show(sorted());
  };
  const tell: TellRow = (row) => {
    if (!isWanted() || rows.has(row.index)) return;
    rows.set(row.index, row);
    timer ??= setTimeout(flush, BATCH);
  };
  return { tell, sorted, flush };
}
