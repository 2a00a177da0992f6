import type { CaseResult, HeadResult } from '@flathead/solver';
import { shownCase } from '../state/shown-case.ts';
import { levelDecimals } from '../state/waterfall.ts';
import styles from './compare.module.css';

interface SitesComparedProps {
  readonly names: readonly [string, string];
  readonly results: readonly [HeadResult, HeadResult];
  /** `null` = the worst of each. */
  readonly caseName: string | null;
  /** On the bow, mm. */
  readonly limit: number;
}

/** The bow of each site in two heads, and what it differs by, um. */
export function SitesCompared({ names, results, caseName, limit }: SitesComparedProps) {
  const shown = results.map((result) => shownCase(result, caseName));
  const [a, b] = results.map((result, i) => bowsOf(result, shown[i]));
  const sites = [...new Set([...a.keys(), ...b.keys()])];
  const decimals = levelDecimals([...a.values(), ...b.values()].map((bow) => 1000 * bow));
  const text = (um: number): string => {
    const digits = Math.abs(um).toFixed(decimals);
    return Number(digits) === 0 ? digits : `${um < 0 ? '−' : '+'}${digits}`;
  };
  const rounded = (bow: number): number => Number((1000 * bow).toFixed(decimals));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: more sites than there is room for are reached with the arrow keys
    <section className={styles.wide} tabIndex={0} aria-label="Bow of each site">
      <table className={styles.sites} data-testid="comparison-sites">
        <thead>
          <tr>
            <th scope="col">Bow, µm</th>
            {sites.map((site) => (
              <th key={site} scope="col">
                {site}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[a, b].map((bows, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the two heads have their fixed places
            <tr key={i}>
              <th scope="row">{names[i]}</th>
              {sites.map((site) => {
                const bow = bows.get(site);
                return (
                  <td
                    key={site}
                    data-over={(bow !== undefined && Math.abs(bow) > limit) || undefined}
                    data-worst={shown[i].bow.site === site || undefined}
                  >
                    {bow === undefined ? '' : text(1000 * bow)}
                  </td>
                );
              })}
            </tr>
          ))}
          <tr>
            <th scope="row">Difference</th>
            {sites.map((site) => {
              const [from, to] = [a.get(site), b.get(site)];
              return (
                <td key={site}>{from === undefined || to === undefined ? '' : text(rounded(to) - rounded(from))}</td>
              );
            })}
          </tr>
        </tbody>
      </table>
    </section>
  );
}

function bowsOf(result: HeadResult, { sites }: CaseResult): ReadonlyMap<string, number> {
  return new Map(result.sites.map(({ name }, i) => [name, sites[i]?.bow ?? 0]));
}
