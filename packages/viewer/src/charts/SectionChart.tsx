import { useElementSize } from '@mantine/hooks';
import { type KeyboardEvent, useId, useState } from 'react';
import type { SiteExtent } from '../buffers/section-profile.ts';
import { fieldText } from '../format/number.ts';
import { dashes, SectionPlot } from './SectionPlot.tsx';
import { SectionTable } from './SectionTable.tsx';
import styles from './section-chart.module.css';
import { type LabelledProfile, type SectionAxis, sectionScales } from './section-scales.ts';
import { describeSection, readText } from './section-words.ts';

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

/** Before the place is measured, and in print, px. */
const USUAL_WIDTH = 720;

/** Deviation along a line through the head: limit band, extents of the sites, several heads or cases compared. */
export function SectionChart(props: SectionChartProps) {
  const { profiles, limit, sites, title, axis = null, height = 200, onRead } = props;
  const words = useId();
  const { ref, width: measured } = useElementSize();
  const [read, setRead] = useState<number | null>(null);
  const width = props.width ?? (measured || USUAL_WIDTH);
  const scales = sectionScales(profiles, limit, axis, width, height);
  const { length, x } = scales;

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
          {describeSection(profiles, limit, sites, title)}
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
          <SectionPlot {...{ profiles, limit, sites, axis, scales, read }} />
        </div>
        <output className={styles.readout} data-testid="section-readout">
          {read === null ? ' ' : readText(profiles, axis, read)}
        </output>
      </div>
      <figcaption className={styles.key}>
        {profiles.map(({ label }, i) => (
          <span key={label} className={styles.entry}>
            <svg width="26" height="8" aria-hidden="true">
              <path className={styles.line} data-rank={i} strokeDasharray={dashes(i)} d="M0 4h26" />
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
