import { type HeadModel, screws, siteLayout } from '@flathead/solver';
import { ribLines } from '../state/rib-lines.ts';
import { boxOf } from '../state/shape-box.ts';
import { Dimension, roomOf } from './Dimension.tsx';
import { PlanKey } from './PlanKey.tsx';
import styles from './start.module.css';

/** The drawing, and of it the head at most, px where the page is narrow; all is larger where it is not. */
const WIDTH = 240;
const MOST = [196, 200] as const;

/** A drafted head from above, to scale: body, frame, ribs, probe fields and screws, and its outer sizes. */
export function StartPlan({ model }: { model: HeadModel }) {
  const { body, frame, sites, fasteners } = model;
  const own = boxOf(body.outline);
  const outer = frame && boxOf(frame.outer);
  const [width, height] = outer ?? own;
  const unit = Math.max(width / MOST[0], height / MOST[1]);
  const sized = outer ? [own, outer] : [own];
  const [left, under] = [roomOf(sized.length, 'y') * unit, roomOf(sized.length, 'x') * unit];
  const box = ([bw, bh]: readonly [number, number], className: string | undefined, corner = 0) => (
    <rect className={className} x={-bw / 2} y={-bh / 2} width={bw} height={bh} rx={corner} />
  );
  return (
    <>
      <svg
        className={styles.plan}
        viewBox={`${-width / 2 - left} ${-height / 2} ${width + left} ${height + under}`}
        style={{ width: `${(100 * (width + left)) / unit / WIDTH}%` }}
        role="img"
        aria-label={`The head from above, ${width} by ${height} mm`}
      >
        {outer && box(outer, styles.frame, 3)}
        {box(own, styles.body, 2)}
        {frame && box(boxOf(frame.window), styles.window, 1)}
        {(frame?.ribs ?? []).flatMap((rib) =>
          ribLines(model, rib).map(({ from, to }) => (
            <line
              key={`${from} ${to}`}
              className={styles.rib}
              strokeWidth={rib.width}
              x1={from[0]}
              y1={-from[1]}
              x2={to[0]}
              y2={-to[1]}
            />
          )),
        )}
        {siteLayout(sites).map(({ name, centre: [x, y], field: [fw, fh] }) => (
          <rect key={name} className={styles.site} x={x - fw / 2} y={-y - fh / 2} width={fw} height={fh} />
        ))}
        {fasteners.map(({ name, at: [x, y], screw }) => (
          <circle key={name} className={styles.screw} cx={x} cy={-y} r={(screws[screw ?? '']?.head ?? 4) / 2} />
        ))}
        {sized.map(([w, h], level) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a size is its place
          <g key={level}>
            <Dimension along="x" size={w} across={height} level={level} unit={unit} />
            <Dimension along="y" size={h} across={width} level={level} unit={unit} />
          </g>
        ))}
      </svg>
      <PlanKey framed={frame !== undefined} ribbed={(frame?.ribs ?? []).length > 0} />
    </>
  );
}
