import { Fault } from '../fault/fault.ts';
import { difference, intersection } from '../geometry/boolean.ts';
import type { Region, Ring } from '../geometry/point.ts';
import { area } from '../geometry/region.ts';
import type { Site } from '../layout/site.ts';
import type { HeadParts } from './parts.ts';

/** Overlap below this share of a probe field is rounding. */
const NOTHING = 1e-9;

/** Ring of a site's probe field, counter-clockwise. */
export function fieldRing({ centre: [x, y], field: [width, height] }: Site): Ring {
  const [dx, dy] = [width / 2, height / 2];
  return [
    [x - dx, y - dy],
    [x + dx, y - dy],
    [x + dx, y + dy],
    [x - dx, y + dy],
  ];
}

/**
 * Probe fields need body under them, and no opening, frame or rib.
 *
 * @throws Fault OUTSIDE or OVERLAP that names the site
 */
export function requireSiteRoom(sites: readonly Site[], fields: readonly Ring[], parts: HeadParts): void {
  parts.openings.forEach((opening, i) => {
    const path = `body.openings.${i}`;
    forbid(
      [opening],
      path,
      (site) => `The opening of ${path} cuts into the probe field of site ${site}`,
      'Move or shrink it',
    );
  });
  forbid(
    parts.frame,
    'frame.window',
    (site) => `The frame covers part of the probe field of site ${site}`,
    'Widen its window',
  );
  for (const { region, path } of parts.ribs)
    forbid(
      region,
      path,
      (site) => `The rib of ${path} covers part of the probe field of site ${site}`,
      'Make it narrower or move it',
    );
  const off = difference(fields, parts.body);
  if (area(off) <= NOTHING * area(fields)) return;
  const site = sites[fields.findIndex((field) => area(difference([field], parts.body)) > NOTHING * area([field]))];
  throw new Fault(
    'OUTSIDE',
    `The probe field of site ${site.name} at [${site.centre}] reaches beyond the body. Enlarge body.outline, or bring the sites closer together.`,
    'sites',
    { site: site.name, at: site.centre, expected: 'probe fields within body.outline' },
  );

  function forbid(region: Region, path: string, what: (site: string) => string, remedy: string): void {
    if (region.length === 0 || area(intersection(fields, region)) <= NOTHING * area([fields[0]])) return;
    const hit = sites[fields.findIndex((field) => area(intersection([field], region)) > NOTHING * area([field]))];
    throw new Fault('OVERLAP', `${what(hit.name)}. ${remedy}, or move the sites.`, path, { site: hit.name });
  }
}
