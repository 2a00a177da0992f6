import type { FigureScatter, ToleranceRow } from '@flathead/solver';
import page from '../app/page.module.css';
import { ChartTable } from '../charts/ChartTable.tsx';
import { Histogram } from '../charts/Histogram.tsx';
import { TornadoChart } from '../charts/TornadoChart.tsx';
import { CRITERION_NAMES } from '../format/criterion-text.ts';
import { amountDigits, fieldText, typeset, unitText } from '../format/number.ts';
import { FaultsOf } from './FaultsOf.tsx';
import styles from './studies.module.css';
import type { StudyRecord } from './study-record.ts';
import { capabilityWords, failingWords, interval, percent, rangeOfShare, share } from './tolerance-words.ts';

/** An error of a share from which on it is no number to go by. */
const WIDE = 0.1;

/** How heads scatter: how many fail, how far it is from the limit, what matters most. */
export function ToleranceResult({ record }: { record: StudyRecord<'tolerance'> }) {
  const { rows, summary, plan } = record;
  if (summary === null) return null;
  const { heads, failing, figures, remarks, confidence } = summary;
  const sure = fieldText(Number((100 * confidence).toPrecision(4)));
  // Of a block with indices only the first two heads are heads as they come.
  const causes = figures[0]?.indices?.length ?? 0;
  const block = plan.indices === true ? heads * (rows.length / heads) : 0;
  const plain = block > 0 && causes > 0 ? rows.filter(({ index }) => index % (causes + 2) < 2) : rows;
  return (
    <>
      <p className={styles.sentence} data-testid="tolerance-failing">
        {failingWords(failing, heads, sure)}
        {block > 0 && plain.length < rows.length && (
          <>
            {' '}
            {heads / 2} were asked for; shares of the causes need each twice, and {rows.length - plain.length} mixtures
            of them.
          </>
        )}
      </p>
      {figures.map((figure) => (
        <Scatter key={figure.criterion} figure={figure} rows={plain} />
      ))}
      <ul className={styles.remarks}>
        {remarks.map((remark) => (
          <li key={remark}>{typeset(remark)}</li>
        ))}
      </ul>
      <FaultsOf rows={rows} />
    </>
  );
}

function Scatter({ figure, rows }: { figure: FigureScatter; rows: readonly ToleranceRow[] }) {
  const { criterion, unit, limit, bound, mean, sigma, quantiles, capability, failing, indices } = figure;
  const name = CRITERION_NAMES[criterion as keyof typeof CRITERION_NAMES] ?? criterion;
  const scale = unit === 'mm' ? 1000 : 1;
  const values = rows.flatMap(({ figures }) => {
    const value = figures?.[criterion]?.value;
    return value === undefined ? [] : [value * scale];
  });
  const amount = (value: number): string => `${amountDigits(value, unit)} ${unitText(unit)}`.trim();
  const title = `${name} of ${values.length} heads`;
  return (
    <section aria-label={name}>
      <h2 className={page.heading}>{name}</h2>
      <dl className={styles.figures}>
        <Fact name="Mean" value={amount(mean)} />
        <Fact name="Standard deviation" value={unit === 'mm' ? `${(sigma * 1000).toFixed(2)} µm` : amount(sigma)} />
        <Fact name={bound === 'most' ? 'Cpu' : 'Cpl'} value={capabilityWords(capability, failing)} />
        <Fact name="Beyond the limit" value={interval(failing, percent)} />
      </dl>
      <Histogram
        values={values}
        limit={limit * scale}
        bound={bound}
        title={`${title}: mean ${amount(mean)}, limit ${amount(limit)}`}
        xTitle={unit === '1' ? name.toLowerCase() : `${name.toLowerCase()}, ${unitText(unit)}`}
        marks={quantiles.map(({ share, value }) => ({
          at: value * scale,
          label: `${fieldText(Number((100 * share).toPrecision(4)))} %`,
        }))}
      />
      <ChartTable
        title={`Quantiles of ${name.toLowerCase()}`}
        columns={['Share below', `value, ${unitText(unit) || '1'}`, 'at least', 'at most']}
        rows={quantiles.map(({ share, value, low, high }) => [
          `${fieldText(Number((100 * share).toPrecision(4)))} %`,
          amountDigits(value, unit),
          low === null ? 'open' : amountDigits(low, unit),
          high === null ? 'open' : amountDigits(high, unit),
        ])}
      />
      {indices !== null && indices.length > 0 && <Matters name={name} indices={indices} />}
    </section>
  );
}

function Matters({ name, indices }: { name: string; indices: NonNullable<FigureScatter['indices']> }) {
  const [most, second] = indices;
  const unsure = second !== undefined && most.total - most.totalError < second.total + second.totalError;
  const title = `What the scatter of the ${name.toLowerCase()} comes from`;
  return (
    <>
      <h2 className={page.heading}>What matters</h2>
      <p className={styles.sentence} data-testid="matters-most">
        {most.cause} matters most: {share(most.total)} of the variance has to do with it,{' '}
        {rangeOfShare(most.total, most.totalError)} with 95 % confidence.
        {unsure
          ? ' The errors overlap; take more heads to be sure of the order.'
          : most.totalError > WIDE && ' Take more heads to know the share.'}
      </p>
      <TornadoChart bars={indices} title={title} />
      <p className={styles.key}>
        <i data-key="total" /> in all, with other causes <i data-key="first" /> by itself; whiskers hold the true share
        with 95 % confidence
      </p>
      <ChartTable
        title={title}
        testId="tornado-table"
        columns={['Cause', 'by itself', '±', 'in all', '± in all']}
        rows={indices.map(({ cause, first, firstError, total, totalError }) => [
          cause,
          ...[first, firstError, total, totalError].map((share) => share.toFixed(3).replace('-', '\u2212')),
        ])}
      />
    </>
  );
}

function Fact({ name, value }: { name: string; value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}
