import { type HeadModel, type HeadResult, modelHash, VERSION } from '@flathead/solver';
import { typeset } from '../format/number.ts';
import type { NumberRows } from '../format/number-rows.ts';
import { assumptions } from './assumptions.ts';
import { BoardTables } from './BoardTables.tsx';
import { caseRows } from './case-rows.ts';
import { CAUTIONS } from './cautions.ts';
import { criterionRows } from './criterion-rows.ts';
import { FactList } from './FactList.tsx';
import { FastenerTables } from './FastenerTables.tsx';
import { headFacts } from './facts.ts';
import { materialRows } from './material-rows.ts';
import { OutcomeBlock } from './OutcomeBlock.tsx';
import { pageMargins } from './page-margins.ts';
import { ReportMaps } from './ReportMaps.tsx';
import { ReportSection } from './ReportSection.tsx';
import { ReportTable } from './ReportTable.tsx';
import type { ReportFields } from './report-fields.ts';
import { SiteTables } from './SiteTables.tsx';
import { SolutionNote } from './SolutionNote.tsx';
import { strengthRows } from './strength-rows.ts';
import { TitleBlock } from './TitleBlock.tsx';

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

/** The report of one full answer, the same on the page, on paper and in a file. Every name in it is text. */
export function ReportDocument({ model, result, fields, date, book, outdated }: ReportDocumentProps) {
  const { verdict } = result;
  const hash = modelHash(model);
  const strength = strengthRows(result);
  return (
    <article className="report paper" lang="en" data-testid="report" data-hash={hash}>
      <style>{pageMargins({ name: model.name, project: fields.project, hash, version: VERSION, date })}</style>
      <TitleBlock {...{ model, fields, date, outdated }} />
      <OutcomeBlock {...{ model, result }} />

      <ReportTable title="Verdict" testId="report-criteria" words large {...criterionRows(verdict.criteria)} />
      <ReportMaps model={model} result={result} />
      <ReportSection model={model} result={result} />

      <h2>Load cases</h2>
      <ReportTable title="What is done to the head, and what it does" words {...caseRows(model, result)} />

      <h2>Fasteners</h2>
      <FastenerTables {...{ model, result }} />

      <h2>Sites</h2>
      <SiteTables result={result} />
      {strength && (
        <>
          <h2>Strength</h2>
          <ReportTable title="Largest stress over all cases" words {...strength} />
        </>
      )}

      <h2>Inputs</h2>
      <FactList groups={headFacts(model)} />
      <ReportTable title="Materials" words {...materialRows(model)} />
      <BoardTables {...model} />

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
      <SolutionNote {...result} />
      {book && (
        <ReportTable
          title="The verification book"
          close
          note={`cases by what their number rests on${book.columns.includes('Within') ? '; within: of those run here' : ''}`}
          {...book}
        />
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
