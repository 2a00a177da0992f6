import { type HeadModel, type HeadResult, modelHash, VERSION } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { typeset } from '../format/number.ts';
import type { NumberRows } from '../format/number-rows.ts';
import { assumptions } from './assumptions.ts';
import { CAUTIONS } from './cautions.ts';
import { FactList } from './FactList.tsx';
import { headFacts, materialRows } from './facts.ts';
import { fastenerSummaries } from './fastener-summary.ts';
import { pageMargins } from './page-margins.ts';
import { ReportMaps } from './ReportMaps.tsx';
import { ReportSection } from './ReportSection.tsx';
import { ReportTable } from './ReportTable.tsx';
import type { ReportFields } from './report-fields.ts';
import {
  bowRows,
  caseRows,
  contactRows,
  criterionRows,
  forceRows,
  holdRows,
  placeRows,
  reactionRows,
  siteRows,
  strengthRows,
} from './result-rows.ts';
import { pairWords, plain, shapeWords } from './shape-words.ts';
import { summarySentences } from './summary.ts';

interface ReportDocumentProps {
  readonly model: HeadModel;
  readonly result: HeadResult;
  readonly fields: ReportFields;
  /** ISO day. */
  readonly date: string;
  /** The verification book in figures; `null` until it is fetched. */
  readonly book: NumberRows | null;
  /** Said on the report itself when it is not of the head on the bench. */
  readonly outdated: boolean;
}

const OUTCOMES = { pass: 'Pass', marginal: 'Marginal', fail: 'Fail' };

/** The report of one full answer, the same on the page, on paper and in a file. Every name in it is text. */
export function ReportDocument({ model, result, fields, date, book, outdated }: ReportDocumentProps) {
  const { verdict, mesh, dofs, cases } = result;
  const hash = modelHash(model);
  const summaries = fastenerSummaries(model, result);
  const bows = bowRows(result);
  const contact = contactRows(result);
  const sites = siteRows(result);
  const forces = forceRows(result, model, summaries);
  const strength = strengthRows(result);
  const joints = summaries.some(({ proof }) => proof !== null);
  const residuals = cases.flatMap(({ residual }) => (residual === null ? [] : [residual]));
  return (
    <article className="report paper" lang="en" data-testid="report" data-hash={hash}>
      <style>{pageMargins({ name: model.name, project: fields.project, hash, version: VERSION, date })}</style>
      <header className="report-head">
        <div className="report-block">
          <div className="report-title">
            <p className="report-kind">Planarity report</p>
            <h1>{model.name}</h1>
          </div>
          <dl className="report-card">
            {[
              ['Project', fields.project],
              ['Author', fields.author],
              ['Checked', ''],
              ['Approved', ''],
              ['Revision', fields.revision],
              ['Date', date],
              ['Model', hash],
              ['Solver', `Flathead ${VERSION}`],
            ].map(([what, value]) => (
              <div key={what}>
                <dt>{what}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </div>
        {model.note !== undefined && <p className="report-note">{model.note}</p>}
        {fields.note !== '' && <p className="report-note">{fields.note}</p>}
        {outdated && (
          <p className="report-outdated" role="note">
            Not of the head as it is now: of its last state that could be solved.
          </p>
        )}
      </header>

      <section className="report-summary" data-outcome={verdict.outcome}>
        <p className="report-outcome">
          <span className="report-badge">
            <Icon name={verdict.outcome} size={20} weight={2.4} />
          </span>
          <span data-testid="report-outcome">{OUTCOMES[verdict.outcome]}</span>
        </p>
        <div>
          {summarySentences(model, result).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      </section>

      <ReportTable title="Verdict" testId="report-criteria" words large {...criterionRows(verdict.criteria)} />
      <ReportMaps model={model} result={result} />
      <ReportSection model={model} result={result} />

      <h2>Load cases</h2>
      <ReportTable title="What is done to the head, and what it does" words {...caseRows(model, result)} />

      <h2>Fasteners</h2>
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

      <h2>Sites</h2>
      {sites ? (
        <ReportTable
          title="Bow, µm, and contact force of one probe"
          note="bow from the fastener plane, away from the board positive; contact in the worst case"
          testId="report-sites"
          {...sites}
        />
      ) : (
        <>
          {bows.tables.map((rows) => (
            <ReportTable
              key={rows.columns.join()}
              title="Bow, µm"
              note={
                bows.left > 0
                  ? `largest bows; ${bows.left} sites are left out`
                  : 'from the fastener plane, away from the board positive'
              }
              testId="report-sites"
              {...rows}
            />
          ))}
          {contact && (
            <ReportTable title="Contact force" note="of one probe, in the worst case of each site" words {...contact} />
          )}
        </>
      )}
      {strength && (
        <>
          <h2>Strength</h2>
          <ReportTable title="Largest stress over all cases" words {...strength} />
        </>
      )}

      <h2>Inputs</h2>
      <FactList groups={headFacts(model)} />
      <ReportTable title="Materials" words {...materialRows(model)} />
      <ReportTable
        title="Keep-outs of the board"
        words
        columns={['Keep-out', 'area', 'clearance asked for, mm']}
        rows={(model.keepOuts ?? []).map(({ name, shape, clearance = 0 }) => [
          name,
          shapeWords(shape),
          plain(clearance),
        ])}
      />
      <ReportTable
        title="Seats of the board"
        words
        columns={['Seat', 'area', 'stiffness']}
        rows={(model.seats ?? []).map((seat) => [
          seat.name,
          'shape' in seat ? shapeWords(seat.shape) : `Ø ${plain(seat.diameter)} mm at ${pairWords(seat.at)}`,
          seat.modulus === undefined ? `${plain(seat.stiffness ?? 0)} N/mm` : `${plain(seat.modulus)} N/mm³`,
        ])}
      />

      <h2>Assumptions and remarks</h2>
      <ul className="report-list">
        {assumptions(model).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {verdict.remarks.map((remark) => (
          <li key={remark} className="report-remark">
            {typeset(remark)}
          </li>
        ))}
      </ul>

      <h2>Checks behind these numbers</h2>
      <p>
        Flathead {VERSION} is held against published plates, standards and closed solutions, each with its source and
        its tolerance; the page Checks runs them on the machine at hand. This head was solved on{' '}
        {mesh.x.length.toLocaleString('en')} nodes and {mesh.region.length.toLocaleString('en')} elements with{' '}
        {dofs.toLocaleString('en')} unknowns, smallest angle {mesh.minAngle.toFixed(1)}°
        {residuals.length === cases.length &&
          `; the scaled residual of its equations is at most ${Math.max(...residuals)
            .toExponential(1)
            .replace('-', '\u2212')}`}
        . Loads and reactions balance within{' '}
        {Math.max(...cases.map(balance))
          .toExponential(0)
          .replace('-', '\u2212')}{' '}
        of the load.
      </p>

      {book && (
        <section className="report-book">
          <h3>
            The verification book{' '}
            <small>cases by what their number rests on; within: of those run here, on this visit</small>
          </h3>
          <div className="report-halves">
            {halves(book.rows).map((rows) => (
              <ReportTable key={rows[0]?.[0]} title="" columns={book.columns} rows={rows} />
            ))}
          </div>
        </section>
      )}

      <section className="report-cautions" data-testid="report-cautions">
        <h2>Cautions</h2>
        {CAUTIONS.map(([lead, text]) => (
          <p key={lead}>
            <strong>{lead}</strong> {text}
          </p>
        ))}
      </section>
    </article>
  );
}

function halves<T>(rows: readonly T[]): T[][] {
  const middle = Math.ceil(rows.length / 2);
  return [rows.slice(0, middle), rows.slice(middle)];
}

/** Load and reactions left over, as a share of the load. */
function balance({ load, reaction, seats }: HeadResult['cases'][number]): number {
  const carried = seats.reduce((sum, { force }) => sum + force, reaction);
  return Math.abs(load + carried) / Math.max(Math.abs(load), 1e-9);
}
