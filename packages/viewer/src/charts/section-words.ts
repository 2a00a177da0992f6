import { profileAt, type SiteExtent } from '../buffers/section-profile.ts';
import { coordinateText, fieldText, signedMicrometres } from '../format/number.ts';
import type { LabelledProfile, SectionAxis } from './section-scales.ts';

/** Values of all profiles at a distance along the line: `at x −16 mm: +43.1 µm`. */
export function readText(profiles: readonly LabelledProfile[], axis: SectionAxis | null, s: number): string {
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

/** The chart in words, for those who do not see it. */
export function describeSection(
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
