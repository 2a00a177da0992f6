import type { OrFault, RowStudyName, StudyOrder, TellRow } from '@flathead/solver';
import type { StudyConnection } from './study-connection.ts';

/** Rows handed out at once: long enough that neighbours share meshes, short enough to give way to the bench. */
const LONGEST = 24;
const SHARES = 8;

interface Crew {
  /** Most workers that make rows at once. */
  readonly most: number;
  /** Whether the rows are still wanted; waits while the bench needs the machine. */
  goesOn(): Promise<boolean>;
  /** Asks a worker of its own. */
  ask(question: (worker: StudyConnection) => Promise<OrFault<null>>): Promise<OrFault<null>>;
}

/** Has every row made once, by several workers, each taking the next few when it is through with its own; how each ended. */
export function shareRows(
  order: StudyOrder<RowStudyName>,
  total: number,
  tell: TellRow,
  { most, goesOn, ask }: Crew,
): Promise<OrFault<null>[]> {
  const workers = Math.min(most, Math.ceil(total / 4));
  const length = Math.max(2, Math.min(LONGEST, Math.ceil(total / (workers * SHARES))));
  let given = 0;
  const work = ({ service, forWorker }: StudyConnection): Promise<OrFault<null>> => {
    const told = forWorker(tell);
    const next = async (): Promise<OrFault<null>> => {
      if (!(await goesOn()) || given >= total) return { ok: true, value: null };
      const indices = Array.from({ length: Math.min(length, total - given) }, (_, k) => given + k);
      given += length;
      const made = await service.rows(order, indices, told);
      if (!made.ok) return made;
      for (const row of made.value) tell(row);
      return next();
    };
    return next();
  };
  return Promise.all(Array.from({ length: workers }, () => ask(work)));
}
