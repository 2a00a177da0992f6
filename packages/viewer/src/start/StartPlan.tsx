import { type HeadModel, screws, siteLayout } from '@flathead/solver';
import { ribLines } from '../state/rib-lines.ts';
import { boxOf } from '../state/shape-box.ts';
import styles from './start.module.css';

/** Margin around the drawing, mm. */
const MARGIN = 3;

/** A drafted head from above, to scale: body, frame, ribs, probe fields and screws. */
export function StartPlan({ model }: { model: HeadModel }) {
  const { body, frame, sites, fasteners } = model;
  const [width, height] = boxOf(frame?.outer ?? body.outline);
  const [w, h] = [width + 2 * MARGIN, height + 2 * MARGIN];
  const box = ([bw, bh]: readonly [number, number], className: string | undefined, corner = 0) => (
    <rect className={className} x={-bw / 2} y={-bh / 2} width={bw} height={bh} rx={corner} />
  );
  return (
    <svg
      className={styles.plan}
      viewBox={`${-w / 2} ${-h / 2} ${w} ${h}`}
      role="img"
      aria-label={`The head from above, ${width} by ${height} mm`}
    >
      {frame && box(boxOf(frame.outer), styles.frame, 3)}
      {box(boxOf(body.outline), styles.body, 2)}
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
    </svg>
  );
}
