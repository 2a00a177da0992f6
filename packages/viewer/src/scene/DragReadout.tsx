import type { Fastener } from '@flathead/solver';
import { screwSize } from '../buffers/screw-size.ts';
import { coordinateText } from '../format/number.ts';
import { nearestSite } from '../state/fastener-moves.ts';
import { nearestKeepOut } from '../state/keep-out-gap.ts';
import { useModel, useRun } from '../state/use-workbench.ts';
import styles from './labels.module.css';

/** Keep-outs farther away than this are not worth a word, mm. */
const FAR = 10;

/** Where a fastener is while it moves, and how far from what matters. */
export function DragReadout({ fastener }: { fastener: Fastener }) {
  const { at } = fastener;
  const sites = useRun(({ solved }) => solved?.result.sites);
  const keepOuts = useModel((model) => model.keepOuts);
  const site = sites ? nearestSite(sites, [at[0], at[1]]) : null;
  const keepOut = nearestKeepOut(keepOuts, [at[0], at[1]], screwSize(fastener).head);
  return (
    <>
      <span className={styles.place}>
        x {coordinateText(at[0])} y {coordinateText(at[1])}
      </span>
      {site && (
        <span className={styles.near}>
          {site.distance.toFixed(1)} mm to site {site.site.name}
        </span>
      )}
      {keepOut && keepOut.gap < FAR && (
        <span className={styles.near} data-short={keepOut.short || undefined}>
          {keepOut.gap > 0 ? `${keepOut.gap.toFixed(1)} mm to ${keepOut.name}` : `on ${keepOut.name}`}
        </span>
      )}
    </>
  );
}
