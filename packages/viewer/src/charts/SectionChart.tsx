import { useElementSize } from '@mantine/hooks';
import { scaleLinear } from 'd3-scale';
import { type KeyboardEvent, useId, useState } from 'react';
import { profileAt, type SectionProfile, type SiteExtent } from '../buffers/section-profile.ts';
import { coordinateText, fieldText, signedMicrometres } from '../format/number.ts';
import { SectionTable } from './SectionTable.tsx';
import styles from './section-chart.module.css';

export interface LabelledProfile extends SectionProfile {
  readonly label: string;
}

/** What the places along a line are told by: a coordinate of the head, from its first to its last point. */
export interface SectionAxis {
  readonly name: 'x' | 'y';
  readonly from: number;
  readonly to: number;
}

interface SectionChartProps {
  /** On the same line; the first is drawn strongest. */
  readonly profiles: readonly LabelledProfile[];
  /** Limit on the bow, um. */
  readonly limit: number;
  readonly sites: readonly SiteExtent[];
  /** Where the line runs along x or y of the head: which, and between which coordinates. */
  readonly axis?: SectionAxis | null;
  /** What is cut, for those who do not see it: `Deviation along the row of site A3`. */
  readonly title: string;
  /** px; that of the place it stands in if left out. */
  readonly width?: number;
  readonly height?: number;
  /** Told the distance along the line that is read, and when none is any more. */
  readonly onRead?: (s: number | null) => void;
}

const MARGIN = { left: 46, right: 14, top: 20, bottom: 21 };
/** Height from which on the vertical axis has its title in words on a line of its own, px. */
const TITLED = 130;
const TITLE_LINE = 13;
/** Room of the words at the end of the axis, and height from line to line of the grid at least, px. */
const AXIS = 104;
const LINE = 15;
/** Before the place is measured, and in print, px. */
const USUAL_WIDTH = 720;
/** Names of sites narrower than this are left out, px. */
const NARROW = 15;
/** Strokes tell profiles apart in print and for every eye. */
const DASHES = ['', '6 3', '2 3', '9 3 2 3'];

/** Deviation along a line through the head: limit band, extents of the sites, several heads or cases compared. */
export function SectionChart(props: SectionChartProps) {
  const { profiles, limit, sites, title, axis = null, height = 200, onRead } = props;
  const titled = height >= TITLED;
  const top = MARGIN.top + (titled ? TITLE_LINE : 0);
  const words = useId();
  const { ref, width: measured } = useElementSize();
  const [read, setRead] = useState<number | null>(null);
  const width = props.width ?? (measured || USUAL_WIDTH);
  const length = profiles[0]?.s.at(-1) ?? 0;
  const x = scaleLinear()
    .domain([0, length || 1])
    .range([MARGIN.left, width - MARGIN.right]);
  const [low, high] = reach(profiles, limit);
  const y = scaleLinear()
    .domain([low, high])
    .nice(5)
    .range([height - MARGIN.bottom, top]);
  const [floor, ceiling] = y.domain();

  const places = axis === null ? x : x.copy().domain([axis.from, axis.to]);
  const along = places.ticks(Math.max(2, width / 90)).filter((tick) => places(tick) < width - MARGIN.right - AXIS);

  const show = (s: number | null): void => {
    setRead(s);
    onRead?.(s);
  };
  const step = (event: KeyboardEvent): void => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (event.key === 'Escape') show(null);
    if (by === undefined) return;
    event.preventDefault();
    const from = read ?? (by > 0 ? 0 : length);
    show(Math.min(length, Math.max(0, from + by * (event.shiftKey ? 5 : 0.5))));
  };

  return (
    <figure className={styles.chart} aria-label={title}>
      <div ref={ref} className={styles.plot}>
        <p id={words} className={styles.spoken}>
          {describe(profiles, limit, sites, title)}
        </p>
        <div
          role="slider"
          tabIndex={0}
          className={styles.reader}
          data-testid="section-chart"
          aria-label="Read along the line"
          aria-describedby={words}
          aria-valuemin={0}
          aria-valuemax={Number(length.toFixed(2))}
          aria-valuenow={Number((read ?? 0).toFixed(2))}
          aria-valuetext={
            read === null ? 'nothing read; arrow keys read along the line' : readText(profiles, axis, read)
          }
          onKeyDown={step}
          onBlur={() => show(null)}
          onPointerMove={(event) => {
            const at = x.invert(event.clientX - event.currentTarget.getBoundingClientRect().left);
            show(at >= 0 && at <= length ? at : null);
          }}
          onPointerLeave={() => show(null)}
        >
          <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
            {sites.map(({ name, from, to }) => (
              <g key={name}>
                <rect
                  className={styles.band}
                  x={x(from)}
                  width={x(to) - x(from)}
                  y={y(Math.min(limit, ceiling))}
                  height={y(Math.max(-limit, floor)) - y(Math.min(limit, ceiling))}
                />
                <rect
                  className={styles.site}
                  x={x(from)}
                  width={x(to) - x(from)}
                  y={top}
                  height={height - top - MARGIN.bottom}
                />
                {x(to) - x(from) > NARROW && (
                  <text className={styles.siteName} x={x((from + to) / 2)} y={top - 6}>
                    {name}
                  </text>
                )}
              </g>
            ))}
            {y.ticks(Math.min(5, (height - top - MARGIN.bottom) / LINE)).map((tick) => (
              <g key={tick}>
                <line
                  className={tick === 0 ? styles.zero : styles.grid}
                  x1={MARGIN.left}
                  x2={width - MARGIN.right}
                  y1={y(tick)}
                  y2={y(tick)}
                />
                <text className={styles.tick} x={MARGIN.left - 6} y={y(tick) + 3.5} textAnchor="end">
                  {fieldText(tick).replace('-', '\u2212')}
                </text>
              </g>
            ))}
            {along.map((tick) => (
              <text
                key={tick}
                className={styles.tick}
                x={places(tick)}
                y={height - MARGIN.bottom + 14}
                textAnchor="middle"
              >
                {fieldText(tick).replace('-', '\u2212')}
              </text>
            ))}
            <text className={styles.axis} x={width - MARGIN.right} y={height - MARGIN.bottom + 14} textAnchor="end">
              {axis === null ? 'mm along the line' : `${axis.name}, mm`}
            </text>
            <text className={styles.axis} x={4} y={MARGIN.top - 6}>
              {titled ? 'deviation from the plane of the fasteners, µm' : 'µm'}
            </text>
            {[limit, -limit]
              .filter((level) => level <= ceiling && level >= floor)
              .map((level) => (
                <line
                  key={level}
                  className={styles.limit}
                  x1={MARGIN.left}
                  x2={width - MARGIN.right}
                  y1={y(level)}
                  y2={y(level)}
                />
              ))}
            {profiles
              .map((profile, i) => (
                <path
                  key={profile.label}
                  className={styles.line}
                  data-rank={i}
                  strokeDasharray={DASHES[i % DASHES.length]}
                  d={pathOf(profile, x, y)}
                />
              ))
              .reverse()}
            {read !== null && (
              <g className={styles.cursor}>
                <line x1={x(read)} x2={x(read)} y1={top} y2={height - MARGIN.bottom} />
                {profiles.map((profile) => {
                  const value = profileAt(profile, read);
                  return Number.isNaN(value) ? null : (
                    <circle key={profile.label} className={styles.mark} cx={x(read)} cy={y(value)} r={3} />
                  );
                })}
              </g>
            )}
          </svg>
        </div>
        <output className={styles.readout} data-testid="section-readout">
          {read === null ? ' ' : readText(profiles, axis, read)}
        </output>
      </div>
      <figcaption className={styles.key}>
        {profiles.map(({ label }, i) => (
          <span key={label} className={styles.entry}>
            <svg width="26" height="8" aria-hidden="true">
              <path className={styles.line} data-rank={i} strokeDasharray={DASHES[i % DASHES.length]} d="M0 4h26" />
            </svg>
            {label}
          </span>
        ))}
        <span className={styles.entry}>
          <svg width="14" height="10" aria-hidden="true">
            <rect className={styles.band} width="14" height="10" />
          </svg>
          {fieldText(limit)} µm allowed in a site
        </span>
        <SectionTable profiles={profiles} limit={limit} sites={sites} title={title} />
      </figcaption>
    </figure>
  );
}

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

/** Least and largest value to be shown, um: all of the profiles and zero to the limit. */
function reach(profiles: readonly SectionProfile[], limit: number): [number, number] {
  let [low, high] = [0, limit * 1.05];
  for (const { um } of profiles)
    for (const value of um) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  return [low < -0.6 * limit ? Math.min(low, -1.05 * limit) : low, high];
}

function readText(profiles: readonly LabelledProfile[], axis: SectionAxis | null, s: number): string {
  const length = profiles[0]?.s.at(-1) ?? 0;
  const place = axis === null || length === 0 ? s : axis.from + ((axis.to - axis.from) * s) / length;
  const values = profiles.map((profile) => {
    const value = profileAt(profile, s);
    const text = Number.isNaN(value) ? 'off the head' : `${signedMicrometres(value / 1000)} µm`;
    return profiles.length > 1 ? `${profile.label} ${text}` : text;
  });
  const told = coordinateText(Math.round(place * 10) / 10);
  return `at ${axis === null ? '' : `${axis.name} `}${told} mm: ${values.join(', ')}`;
}

/** The chart in words. */
function describe(
  profiles: readonly LabelledProfile[],
  limit: number,
  sites: readonly SiteExtent[],
  title: string,
): string {
  const parts = profiles.map(({ label, s, um }) => {
    let most = -1;
    for (let i = 0; i < um.length; i++)
      if (!Number.isNaN(um[i]) && (most < 0 || Math.abs(um[i]) > Math.abs(um[most]))) most = i;
    return most < 0
      ? `${label} lies off the head`
      : `${label} reaches ${signedMicrometres(um[most] / 1000)} micrometres at ${s[most].toFixed(1)} millimetres`;
  });
  const crossed = sites.length === 0 ? 'no site' : `sites ${sites.map(({ name }) => name).join(', ')}`;
  return `${title}. ${parts.join('; ')}. The limit is ${fieldText(limit)} micrometres. The line crosses ${crossed}.`;
}
