import { type HeadModel, modelHash, VERSION } from '@flathead/solver';
import { typeset } from '../format/number.ts';
import type { ReportFields } from './report-fields.ts';

interface TitleBlockProps {
  readonly model: HeadModel;
  readonly fields: ReportFields;
  /** ISO day. */
  readonly date: string;
  /** Whether the head is another one by now. */
  readonly outdated: boolean;
}

/** What a drawing has in its corner: of what the report is, whose, and of when; then the notes. */
export function TitleBlock({ model, fields, date, outdated }: TitleBlockProps) {
  return (
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
            ['Revision', fields.revision],
            ['Date', date],
            ['Model', modelHash(model)],
            ['Solver', `Flathead ${VERSION}`],
          ].map(([what, value]) => (
            <div key={what}>
              <dt>{what}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        <div className="report-signatures">
          <SigningLine what="Checked by" name={fields.checked} />
          <SigningLine what="Approved by" name={fields.approved} />
        </div>
      </div>
      {model.note !== undefined && <p className="report-note">{typeset(model.note)}</p>}
      {fields.note !== '' && <p className="report-note">{fields.note}</p>}
      {outdated && (
        <p className="report-outdated" role="note">
          Not of the head as it is now: of its last state that could be solved.
        </p>
      )}
    </header>
  );
}

/** A place to sign by hand; the name may stand there already. */
function SigningLine({ what, name }: { what: string; name: string }) {
  return (
    <div className="report-signing">
      <p>{what}</p>
      {[
        ['name', name],
        ['date', ''],
        ['signature', ''],
      ].map(([part, text]) => (
        <p key={part} className="report-line">
          <b>{text}</b>
          <small>{part}</small>
        </p>
      ))}
    </div>
  );
}
