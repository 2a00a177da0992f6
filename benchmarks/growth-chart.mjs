import { scaleLog } from 'd3-scale';

const [WIDTH, HEIGHT] = [640, 400];
const MARGIN = { left: 64, right: 150, top: 24, bottom: 48 };
const SERIES = [
  { of: 'all', label: 'everything, ms', colour: '#1f5f70' },
  { of: 'factor', label: 'factor, ms', colour: '#b3541e' },
  { of: 'entries', label: 'factor entries, thousands', colour: '#6a51a3', scale: 1e-3 },
];

/** Chart of growth with the number of unknowns, logarithmic both ways, as SVG text. */
export function growthChart(rows, exponents) {
  const value = (row, { of, scale = 1 }) => row[of] * scale;
  const values = rows.flatMap((row) => SERIES.map((series) => value(row, series)));
  const x = scaleLog([rows[0].dofs / 1.2, rows.at(-1).dofs * 1.2], [MARGIN.left, WIDTH - MARGIN.right]);
  const y = scaleLog([Math.min(...values) / 1.5, Math.max(...values) * 1.5], [HEIGHT - MARGIN.bottom, MARGIN.top]);
  const decades = (scale) => scale.ticks().filter((tick) => Number.isInteger(Number(Math.log10(tick).toFixed(9))));
  const line = (points, attributes) =>
    `<polyline points="${points.map((point) => point.map((c) => c.toFixed(1)).join(',')).join(' ')}" fill="none" ${attributes}/>`;
  const text = (at, content, attributes = '') =>
    `<text x="${at[0].toFixed(1)}" y="${at[1].toFixed(1)}" ${attributes}>${content}</text>`;
  const grid = [
    ...decades(x).flatMap((tick) => [
      line(
        [
          [x(tick), MARGIN.top],
          [x(tick), HEIGHT - MARGIN.bottom],
        ],
        'stroke="#d8d8d0"',
      ),
      text([x(tick), HEIGHT - MARGIN.bottom + 18], tick.toLocaleString('en'), 'text-anchor="middle"'),
    ]),
    ...decades(y).flatMap((tick) => [
      line(
        [
          [MARGIN.left, y(tick)],
          [WIDTH - MARGIN.right, y(tick)],
        ],
        'stroke="#d8d8d0"',
      ),
      text([MARGIN.left - 8, y(tick) + 4], tick.toLocaleString('en'), 'text-anchor="end"'),
    ]),
    text([(MARGIN.left + WIDTH - MARGIN.right) / 2, HEIGHT - 8], 'unknowns', 'text-anchor="middle"'),
  ];
  const curves = SERIES.flatMap((series) => {
    const points = rows.map((row) => [x(row.dofs), y(value(row, series))]);
    const end = points.at(-1);
    return [
      line(points, `stroke="${series.colour}" stroke-width="2"`),
      ...points.map(
        ([cx, cy]) => `<circle cx="${cx.toFixed(1)}" cy="${cy.toFixed(1)}" r="3.5" fill="${series.colour}"/>`,
      ),
      text([end[0] + 10, end[1] - 4], series.label, `fill="${series.colour}"`),
      text([end[0] + 10, end[1] + 11], `~ unknowns^${exponents[series.of]}`, `fill="${series.colour}"`),
    ];
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="sans-serif" font-size="12" fill="#333">
<title>Growth of time and factor entries with the number of unknowns</title>
<rect width="${WIDTH}" height="${HEIGHT}" fill="#fbfaf6"/>
${[...grid, ...curves].join('\n')}
</svg>
`;
}
