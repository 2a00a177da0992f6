import type { HeadModel, HeadResult } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { summarySentences } from './summary.ts';

const OUTCOMES = { pass: 'Pass', marginal: 'Marginal', fail: 'Fail' };

/** The verdict in a word and in a few sentences. */
export function OutcomeBlock({ model, result }: { model: HeadModel; result: HeadResult }) {
  const { outcome } = result.verdict;
  return (
    <section className="report-summary" data-outcome={outcome}>
      <p className="report-outcome">
        <span className="report-badge">
          <Icon name={outcome} size={20} weight={2.4} />
        </span>
        <span data-testid="report-outcome">{OUTCOMES[outcome]}</span>
      </p>
      <div>
        {summarySentences(model, result).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </section>
  );
}
