import { profileAt, type SectionProfile, type SiteExtent } from '../buffers/section-profile.ts';
import { fieldText } from '../format/number.ts';
import styles from './section-chart.module.css';
import type { LabelledProfile, SectionAxis, SectionScales } from './section-scales.ts';

interface SectionPlotProps {
  readonly profiles: readonly LabelledProfile[];
  /** Limit on the bow, um. */
  readonly limit: number;
  readonly sites: readonly SiteExtent[];
  readonly axis: SectionAxis | null;
  readonly scales: SectionScales;
  /** Distance along the line that is read, mm. */
  readonly read: number | null;
}

/** Height from line to line of the grid at least, px. */
const LINE = 15;
/** Names of sites narrower than this are left out, px. */
const NARROW = 15;
/** Foot of the title of the vertical axis, px. */
const TITLE_FOOT = 14;

/** The picture of a section: limit band and extents of the sites, axes, the profiles and the place that is read. */
export function SectionPlot({ profiles, limit, sites, axis, scales, read }: SectionPlotProps) {
  const { width, height, left, right, top, floor, titled, x, places, along, y } = scales;
  const [lowest, highest] = y.domain();
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {sites.map(({ name, from, to }) => (
        <g key={name}>
          <rect
            className={styles.band}
            x={x(from)}
            width={x(to) - x(from)}
            y={y(Math.min(limit, highest))}
            height={y(Math.max(-limit, lowest)) - y(Math.min(limit, highest))}
          />
          <rect className={styles.site} x={x(from)} width={x(to) - x(from)} y={top} height={floor - top} />
          {x(to) - x(from) > NARROW && (
            <text className={styles.siteName} x={x((from + to) / 2)} y={top - 6}>
              {name}
            </text>
          )}
        </g>
      ))}
      {y.ticks(Math.min(5, (floor - top) / LINE)).map((tick) => (
        <g key={tick}>
          <line className={tick === 0 ? styles.zero : styles.grid} x1={left} x2={right} y1={y(tick)} y2={y(tick)} />
          <text className={styles.tick} x={left - 6} y={y(tick) + 3.5} textAnchor="end">
            {fieldText(tick).replace('-', '\u2212')}
          </text>
        </g>
      ))}
      {along.map((tick) => (
        <text key={tick} className={styles.tick} x={places(tick)} y={floor + 14} textAnchor="middle">
          {fieldText(tick).replace('-', '\u2212')}
        </text>
      ))}
      <text className={styles.axis} x={right} y={floor + 14} textAnchor="end">
        {axis === null ? 'mm along the line' : `${axis.name}, mm`}
      </text>
      <text className={styles.axis} x={4} y={TITLE_FOOT}>
        {titled ? 'deviation from the plane of the fasteners, µm' : 'µm'}
      </text>
      {[limit, -limit]
        .filter((level) => level <= highest && level >= lowest)
        .map((level) => (
          <line key={level} className={styles.limit} x1={left} x2={right} y1={y(level)} y2={y(level)} />
        ))}
      {profiles
        .map((profile, i) => (
          <path
            key={profile.label}
            className={styles.line}
            data-rank={i}
            strokeDasharray={dashes(i)}
            d={pathOf(profile, x, y)}
          />
        ))
        .reverse()}
      {read !== null && (
        <g className={styles.cursor}>
          <line x1={x(read)} x2={x(read)} y1={top} y2={floor} />
          {profiles.map((profile) => {
            const value = profileAt(profile, read);
            return Number.isNaN(value) ? null : (
              <circle key={profile.label} className={styles.mark} cx={x(read)} cy={y(value)} r={3} />
            );
          })}
        </g>
      )}
    </svg>
  );
}

/** A stroke of its own for each profile: told apart in print and by every eye. */
export function dashes(rank: number): string {
  return DASHES[rank % DASHES.length];
}

const DASHES = ['', '6 3', '2 3', '9 3 2 3'];

/** Polyline of a profile, broken where the line leaves the head. */
function pathOf({ s, um }: SectionProfile, x: (s: number) => number, y: (um: number) => number): string {
  let path = '';
  let pen = 'M';
  for (let i = 0; i < s.length; i++) {
    if (Number.isNaN(um[i])) {
      pen = 'M';
      continue;
    }
    path += `${pen}${x(s[i]).toFixed(1)} ${y(um[i]).toFixed(1)}`;
    pen = 'L';
  }
  return path;
}
