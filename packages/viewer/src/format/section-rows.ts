import { profileAt, type SectionProfile, type SiteExtent } from '../buffers/section-profile.ts';
import { coordinateText, signedMicrometres } from './number.ts';
import type { NumberRows } from './number-rows.ts';

/** Rows along the line, about. */
const ABOUT = 12;

/** A section in numbers: the largest deviation in each site that the line crosses, then values at round distances. */
export function sectionRows(
  profiles: readonly (SectionProfile & { readonly label: string })[],
  sites: readonly SiteExtent[],
): NumberRows {
  const length = profiles[0]?.s.at(-1) ?? 0;
  const step = roundStep(length / ABOUT);
  const stops = Array.from({ length: Math.floor(length / step + 1e-9) + 1 }, (_, i) => Number((i * step).toFixed(6)));
  return {
    columns: ['Where', ...profiles.map(({ label }) => `${label}, µm`)],
    rows: [
      ...sites.map(({ name, from, to }) => [
        `most in ${name}, ${place(from)} to ${place(to)} mm`,
        ...profiles.map((profile) => cell(largest(profile, from, to))),
      ]),
      ...stops.map((s) => [`at ${place(s)} mm`, ...profiles.map((profile) => cell(profileAt(profile, s)))]),
    ],
  };
}

function largest(profile: SectionProfile, from: number, to: number): number {
  let most = profileAt(profile, from);
  const take = (value: number): void => {
    if (Number.isNaN(most) || Math.abs(value) > Math.abs(most)) most = value;
  };
  profile.s.forEach((s, i) => {
    if (s > from && s < to) take(profile.um[i]);
  });
  take(profileAt(profile, to));
  return most;
}

function roundStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least || 1));
  return ([1, 2, 5].find((lead) => lead * decade >= least - 1e-9) ?? 10) * decade;
}

function cell(um: number): string {
  return Number.isNaN(um) ? '\u2013' : signedMicrometres(um / 1000);
}

function place(mm: number): string {
  return coordinateText(Math.round(mm * 10) / 10);
}
