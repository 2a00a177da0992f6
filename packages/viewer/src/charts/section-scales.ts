import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { SectionProfile } from '../buffers/section-profile.ts';
import type { ChartField } from './chart-field.ts';

export interface LabelledProfile extends SectionProfile {
  readonly label: string;
}

/** What the places along a line are told by: a coordinate of the head, from its first to its last point. */
export interface SectionAxis {
  readonly name: 'x' | 'y';
  readonly from: number;
  readonly to: number;
}

/** Where in a picture the places and values of a section are: `x` of the distance along the line, mm, `y` of a deviation, um. */
export interface SectionScales extends ChartField {
  /** Whether the vertical axis has its title in words. */
  readonly titled: boolean;
  /** Of the line, mm. */
  readonly length: number;
  /** From what the places are told by. */
  readonly places: ScaleLinear<number, number>;
  /** Of them those that are marked. */
  readonly along: readonly number[];
}

const MARGIN = { left: 46, right: 14, top: 20, bottom: 21 };
/** Height from which on the vertical axis has its title in words on a line of its own, px. */
const TITLED = 130;
const TITLE_LINE = 13;
/** Room of the words at the end of the axis, px. */
const AXIS = 104;

/** @param limit on the bow, um */
export function sectionScales(
  profiles: readonly LabelledProfile[],
  limit: number,
  axis: SectionAxis | null,
  width: number,
  height: number,
): SectionScales {
  const titled = height >= TITLED;
  const [left, right, floor] = [MARGIN.left, width - MARGIN.right, height - MARGIN.bottom];
  const top = MARGIN.top + (titled ? TITLE_LINE : 0);
  const length = profiles[0]?.s.at(-1) ?? 0;
  const x = scaleLinear()
    .domain([0, length || 1])
    .range([left, right]);
  const y = scaleLinear().domain(reach(profiles, limit)).nice(5).range([floor, top]);
  const places = axis === null ? x : x.copy().domain([axis.from, axis.to]);
  const along = places.ticks(Math.max(2, width / 90)).filter((tick) => places(tick) < right - AXIS);
  return { width, height, left, right, top, floor, titled, length, x, places, along, y };
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
