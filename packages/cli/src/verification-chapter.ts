import type { VerificationRow } from '@flathead/solver/verification';
import { byTopic, digits, share } from './verification-report.ts';

const PREFACE = `# Verification book

Every case below is solved by the solver as it stands and held against a number that comes from elsewhere. This page is
written by \`flathead verify --write docs/verification.md\`; \`flathead verify\` prints the same and ends with 1 when a case is
outside its tolerance.

- **source gives**: the value of the source, in the unit beside it. *published*: read in the source named. *memory*:
  recalled from it and not read again, so never held tighter than 1 %. *derived*: computed independently of the solver by
  the method named.
- **here**: our value on three meshes, each with half the element size of the one before, and their nodes. Cases of
  formulas need no mesh.
- **order**: observed order of convergence from the three values (Richardson), where they settle: \`-\` where their
  differences are noise, change sign or grow. Deflections are expected near 2, lower next to points and re-entrant or
  obtuse corners; moments at 1 or above.
- **off by**: the finest value against the source.
`;

/** The book as Markdown: a table for each topic, with the sources and the reasons for the tolerances below it. */
export function verificationChapter(rows: readonly VerificationRow[]): string {
  const within = rows.filter((row) => row.within).length;
  const bases = ['published', 'derived', 'memory'].map(
    (basis) => `${rows.filter((row) => row.basis === basis).length} ${basis}`,
  );
  const count = `${within} of ${rows.length} cases are within their tolerance: ${bases.join(', ')}.`;
  return `${[PREFACE, count, ...byTopic(rows).map(([topic, cases]) => section(topic, cases))].join('\n')}`;
}

function section(topic: string, rows: readonly VerificationRow[]): string {
  const sources = [...new Set(rows.map(({ source }) => source))];
  const reasons = [...new Set(rows.map(({ tolerance, why }) => `${share(tolerance)}: ${why}`))];
  const lines = rows.map((row) =>
    [
      caseName(row),
      row.unit,
      digits(row.expected),
      row.values.map(digits).join(', '),
      row.nodes.length === 0 ? '' : row.nodes.join(', '),
      row.order === null ? '-' : row.order.toFixed(1),
      share(row.deviation),
      `${share(row.tolerance)}${row.within ? '' : ' **outside**'}`,
      `${row.basis} (${sources.indexOf(row.source) + 1})`,
    ].join(' | '),
  );
  return `
## ${topic[0].toUpperCase()}${topic.slice(1)}

| case | unit | source gives | here | nodes | order | off by | allowed | basis |
|---|---|---|---|---|---|---|---|---|
${lines.map((line) => `| ${line} |`).join('\n')}

Sources:

${sources.map((source, i) => `${i + 1}. ${source}`).join('\n')}

Tolerances:

${reasons.map((reason) => `- ${reason}`).join('\n')}
`;
}

/** How a case is called in the chapter, where it stands first in its row. */
export function caseName({ model, quantity }: Pick<VerificationRow, 'model' | 'quantity'>): string {
  return `${model}: ${quantity}`;
}
