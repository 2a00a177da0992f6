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
  const outside = (rings: Region): boolean => area(difference(rings, parts.bare)) > NOTHING * area([fields[0]]);
  if (!outside(fields)) return;
  const cramped = fields.findIndex((field) => outside([field]));
  const { name, centre } = sites[cramped];
  const field = [fields[cramped]];
  const covers = (region: Region): boolean => area(intersection(field, region)) > NOTHING * area(field);
  const refuse = (what: string, remedy: string, path: string): never => {
    throw new Fault('OVERLAP', `${what} the probe field of site ${name}. ${remedy}, or move the sites.`, path, {
      site: name,
    });
  };
  parts.openings.forEach((opening, i) => {
    const path = `body.openings.${i}`;
    if (covers([opening])) refuse(`The opening of ${path} cuts into`, 'Move or shrink it', path);
  });
  if (covers(parts.frame)) refuse('The frame covers part of', 'Widen its window', 'frame.window');
  for (const { region, path } of parts.ribs)
    if (covers(region)) refuse(`The rib of ${path} covers part of`, 'Make it narrower or move it', path);
  throw new Fault(
    'OUTSIDE',
    `The probe field of site ${name} at [${centre}] reaches beyond the body. Enlarge body.outline, or bring the sites closer together.`,
    'sites',
    { site: name, at: centre, expected: 'probe fields within body.outline' },
  );
}
