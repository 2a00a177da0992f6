import type { HeadModel, HeadResult } from '@flathead/solver';
import { forceRows, holdRows, placeRows, reactionRows } from './fastener-rows.ts';
import { fastenerSummaries } from './fastener-summary.ts';
import { ReportTable } from './ReportTable.tsx';

/** Where the fasteners are and what they carry; in one table where the cases are few and no joint is judged. */
export function FastenerTables({ model, result }: { model: HeadModel; result: HeadResult }) {
  const summaries = fastenerSummaries(model, result);
  const forces = forceRows(result, model, summaries);
  const joints = summaries.some(({ proof }) => proof !== null);
  return (
    <>
      <ReportTable
        title="Places"
        note="from the centre of the axes, x along the longer row of sites; distances from the edge of the screw head"
        testId="report-fasteners"
        {...placeRows(summaries, model)}
      />
      {forces && !joints ? (
        <ReportTable
          title="Fastener forces, N"
          note="holds: keeps the head from leaving the board; pushes: presses against it from the board. No preload is given: screws and clamp force are not judged"
          {...forces}
        />
      ) : (
        <>
          <ReportTable
            title="Load and joint, in the worst case of each"
            note={
              joints
                ? 'screw margin: share of the proof load that is left, in tension alone'
                : 'no preload is given, so that screws and clamp force are not judged'
            }
            {...holdRows(summaries)}
          />
          {reactionRows(result, model).map((rows) => (
            <ReportTable
              key={rows.columns.join()}
              title="Fastener forces, N"
              note="holds: keeps the head from leaving the board; pushes: presses against it from the board"
              {...rows}
            />
          ))}
        </>
      )}
    </>
  );
}
