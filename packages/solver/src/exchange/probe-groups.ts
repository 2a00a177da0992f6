import { clusters, FEWEST } from './cluster.ts';
import type { ListedRow } from './points-list.ts';

/** Rows by the site that they name, or by the gaps between them, and how that was found. */
export function probeGroups(
  rows: readonly ListedRow[],
  gap: number | undefined,
): { readonly groups: readonly { label: string | null; rows: readonly ListedRow[] }[]; readonly sentence: string } {
  const nameless = rows.filter(({ words: { site = '' } }) => site === '');
  const named = nameless.length === 0;
  const why =
    nameless.length === 0 || nameless.length === rows.length
      ? ''
      : ` The names of sites are not heeded: ${nameless.length} rows have none, such as line ${nameless[0].line}.`;
  if (named && gap === undefined) {
    const groups = bySite(rows);
    return {
      groups: [...groups].map(([label, members]) => ({ label, rows: members })),
      sentence: `Probes belong to the ${groups.size} sites that their rows name.`,
    };
  }
  const {
    group,
    count,
    gap: cut,
    passed,
  } = clusters(
    rows.map(({ numbers: { x, y } }) => [x, y] as const),
    gap,
  );
  const groups = Array.from({ length: count }, (): ListedRow[] => []);
  rows.forEach((row, i) => {
    groups[group[i]].push(row);
  });
  return {
    groups: groups.map((members) => ({ label: null, rows: members })),
    sentence: `${
      cut === null
        ? passed === null
          ? 'No gap parts the probes: they are one site.'
          : `The probes are taken as one site: the gap of ${Number(passed.toPrecision(3))} mm would leave fewer than ${FEWEST} on one side. Say how wide a gap parts sites if that is wrong.`
        : `Probes more than ${Number(cut.toPrecision(3))} mm apart belong to different sites: ${count} of them.`
    }${why}`,
  };
}

function bySite(rows: readonly ListedRow[]): Map<string, ListedRow[]> {
  const groups = new Map<string, ListedRow[]>();
  for (const row of rows) {
    const members = groups.get(row.words.site);
    if (members === undefined) groups.set(row.words.site, [row]);
    else members.push(row);
  }
  return groups;
}
