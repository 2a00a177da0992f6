import type { Estimate, FigureScatter, ToleranceRow, ToleranceSummary } from '@flathead/solver';
import { plain } from './format.ts';
import { amount, faultLines } from './study-text.ts';
import { table } from './table.ts';
import type { Paint } from './terminal.ts';

/** Length of the longest bar of the chart of what matters. */
const BAR = 30;

/** What `flathead tolerance` prints: how each figure scatters, its capability, and what matters most. */
export function toleranceText(rows: readonly ToleranceRow[], summary: ToleranceSummary, paint: Paint): string {
  const { heads, failing, figures, remarks, confidence } = summary;
  const sure = `${plain(confidence * 100).replace(/\.0+$/, '')} %`;
  return [
    `${heads} heads; intervals hold with ${sure} confidence`,
    ...figures.map((figure) => `\n${figureText(figure, paint)}`),
    '',
    `breaks a limit: ${failingText(failing)}`,
    ...remarks.map((remark) => `  Note: ${remark}`),
    ...faultLines(rows, paint),
    '',
  ].join('\n');
}

function figureText(figure: FigureScatter, paint: Paint): string {
  const { criterion, unit, bound, limit, mean, sigma, least, most, quantiles, capability, failing, indices } = figure;
  const value = (of: number): string => amount(of, unit);
  return [
    `${paint.bold(criterion)}  limit ${bound === 'least' ? 'at least ' : ''}${value(limit)}, mean ${value(mean)}, standard deviation ${value(sigma)}, from ${value(least)} to ${value(most)}`,
    ...quantiles.map((quantile) => `  ${plain(quantile.share * 100)} % are below ${interval(quantile, value)}`),
    capability === null
      ? '  no capability: it does not scatter, or the limit is not the same in all heads'
      : `  ${bound === 'most' ? 'Cpu' : 'Cpl'} ${interval(capability, (of) => of.toFixed(2))}, if normally distributed`,
    `  beyond the limit: ${failingText(failing)}`,
    ...(indices === null || indices.length === 0 ? [] : [chart(indices, paint)]),
  ].join('\n');
}

function failingText({ count, ...share }: Estimate & { readonly count: number }): string {
  return `${count} heads, ${interval(share, (of) => `${plain(of * 100)} %`)}`;
}

function interval({ value, low, high }: Estimate, text: (value: number) => string): string {
  return `${text(value)} (${low === null ? 'open' : text(low)} to ${high === null ? 'open' : text(high)})`;
}

/** What matters most: shares of the variance, with a bar for the total. */
function chart(indices: NonNullable<FigureScatter['indices']>, paint: Paint): string {
  const most = Math.max(...indices.map(({ total }) => total), 1e-9);
  return table(
    ['  what matters', 'by itself', 'in all', ''],
    indices.map(({ cause, first, firstError, total, totalError }) => [
      `  ${cause}`,
      `${first.toFixed(3)} +- ${firstError.toFixed(3)}`,
      `${total.toFixed(3)} +- ${totalError.toFixed(3)}`,
      '#'.repeat(Math.max(0, Math.round((BAR * total) / most))),
    ]),
    paint,
    [3],
  );
}
