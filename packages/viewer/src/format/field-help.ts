import { fieldFacts } from './field-facts.ts';
import { fieldText } from './number.ts';

/** What each number means, by its path with `*` for a place in a list; a pair once, without its last key. */
const MEANINGS: Readonly<Record<string, string>> = {
  'body.outline.rectangle': 'Size of the body from above, along x and y',
  'body.thickness': 'Thickness of the body; bending stiffness grows with its cube',
  'sites.columns': 'Sites along x',
  'sites.rows': 'Sites along y',
  'sites.die': 'Size of a die on the wafer, with its scribe line, along x and y',
  'sites.skip': 'Dies left out between neighbouring sites; skipping more makes room for ribs and fasteners',
  'sites.pitch': 'Distance from site to site along x and y',
  'sites.origin': 'Where the middle of the site pattern lies',
  'sites.probes.count': 'Probes in each site; each pushes with the preload',
  'sites.probes.field': 'Area that the probes of one site are drilled into, along x and y',
  'sites.probes.preload':
    'Force of one probe against the mounted head, away from the board; from the data of the probe',
  'sites.probes.touchdown': 'Force of one probe on the wafer at test height; from the data of the probe',
  'sites.probes.rate': 'Force of one probe for each mm of travel; needed for the contact force that is left',
  'sites.probes.holes.pitch': 'Hole to hole in the drilled field',
  'sites.probes.holes.diameter': 'Diameter of a probe hole, less than the pitch',
  'sites.probes.holes.angle': 'Angle by which the rows of holes are turned from x, counter-clockwise',
  'sites.probes.holes.counterbore.diameter': 'Diameter of the wider step, more than that of the hole',
  'sites.probes.holes.counterbore.depth': 'Depth of the wider step from its face, less than the thickness of the body',
  'sites.probes.positions.*': 'Place of one probe from the centre of the site, x and y',
  'sites.probes.positions.*.*': 'Preload of this probe, where it is not that of all',
  'sites.own.*.at': 'Centre of this site, where it is off the pattern',
  'sites.own.*.field': 'Area that the probes of this site are drilled into, where it has its own',
  'sites.own.*.positions.*': 'Place of one probe of this site from its centre, x and y',
  'sites.own.*.positions.*.*': 'Preload of this probe, where it is not that of all',
  'frame.outer.rectangle': 'Size of the frame from above, along x and y',
  'frame.window.rectangle': 'Size of the opening of the frame around the sites, along x and y',
  'frame.thickness': 'Thickness of the frame',
  'frame.ribs.*.width': 'Width of the rib, less than the gap between the probe fields beside it',
  'frame.ribs.*.thickness': 'Thickness of the rib; that of the frame if left empty',
  'frame.ribs.*.from': 'Where the middle line of the rib begins, x and y',
  'frame.ribs.*.to': 'Where the middle line of the rib ends, x and y',
  'frame.ribs.*.skip.*': 'Gap without a rib, counted from 1',
  'fasteners.*.at': 'Place of the screw, x along the sites, y across, from the middle of the pattern',
  'fasteners.*.bearing': 'Diameter on which the screw bears; that of its head if left empty',
  'fasteners.*.stiffness': 'Force of the joint for each mm it gives way; measure it where you can',
  'fasteners.*.engagement': 'Length of thread that is engaged',
  'fasteners.*.preload': 'Clamp force as assembled; with it the joint is judged',
  'fasteners.*.torque': 'Tightening torque, instead of the preload',
  'fasteners.*.torqueFactor': 'Torque over preload and screw diameter: friction of thread and head',
  'fasteners.*.scatter': 'How far the preload may be off, either way; a torque wrench scatters by about 30 %',
  'fasteners.*.height':
    'Measured height of the board under the screw; what matters is how far it is off the plane through all of them',
  'seats.*.height': 'Measured height of the board under the pad, on the scale of those of the fasteners',
  'seats.*.at': 'Middle of the pad, x and y',
  'seats.*.diameter': 'Diameter of the round pad',
  'seats.*.modulus': 'Stiffness of each mm² of the pad',
  'seats.*.stiffness': 'Stiffness of the whole pad',
  'seats.*.shape.rectangle': 'Size of the pad along x and y',
  'keepOuts.*.clearance': 'Least gap between the area and the head of a screw',
  'keepOuts.*.shape.rectangle': 'Size of the area that screws must keep out of, along x and y',
  'cases.*.temperature': 'Uniform temperature of the head; 20 °C if left empty',
  'cases.*.gradient': 'How much warmer the device side is than the board side; negative where it is colder',
  'cases.*.touched.wafer.diameter': 'Diameter of the wafer',
  'cases.*.touched.wafer.edge': 'Rim of the wafer on which no die is tested',
  'limits.bow': 'Largest deviation of the site area from the plane of the fasteners that is allowed',
  'limits.flatness': 'Largest distance of two parallel planes that hold the site area',
  'limits.contactForce': 'Least force that every probe must keep',
  'limits.margin': 'Share of each limit kept in hand: what uses it up is marginal',
  'limits.strengthFactor': 'Least strength over largest stress, of body and frame',
  'limits.failureProbability': 'Largest probability that a ceramic part breaks in a load case',
  'limits.fastener': 'Most that a screw may use of its proof load, its thread and its clamp force',
  'mesh.size': 'Side of an element; chosen to suit the head if not given',
  'mesh.tolerance': 'Numerical error over the limit at which refinement stops',
  'materials.*.E': 'Young’s modulus at 20 °C',
  'materials.*.nu': 'Poisson’s ratio',
  'materials.*.modulus.*.0': 'Temperature of the other modulus',
  'materials.*.modulus.*.1': 'Young’s modulus at that temperature',
  'materials.*.density': 'Density',
  'materials.*.expansion': 'Growth of each metre for each kelvin',
  'materials.*.strength': 'Flexural strength of a ceramic, 0.2 % proof stress of a metal',
  'materials.*.weibull': 'Weibull modulus: the higher, the less the strength scatters',
};

/** Those of any shape, by the last keys. */
const SHAPES: Readonly<Record<string, string>> = {
  rectangle: 'Size along x and y',
  centre: 'Middle of the shape, x and y',
  corner: 'Radius of its corners',
  circle: 'Diameter of the circle',
  'polygon.*': 'Corner of the polygon, x and y',
};

/** What the number at a path means; `null` where nobody has said. */
export function fieldMeaning(path: string): string | null {
  const general = path.replace(/(^|\.)materials\..*(?=\.[a-zA-Z]+(\.\d+)*$)/, '$1materials.*').split('.');
  const keys = general.map((key, i) => (/^\d+$/.test(key) && !isAxis(general, i) ? '*' : key));
  const whole = keys.join('.');
  const pair = /\.[01]$/.test(whole) ? whole.slice(0, -2) : whole;
  const ending = Object.keys(SHAPES).find((key) => pair.endsWith(`.${key}`));
  return MEANINGS[whole] ?? MEANINGS[pair] ?? (ending === undefined ? null : SHAPES[ending]);
}

/** What a field is called in a sentence: its meaning without what follows a semicolon. */
export function fieldName(path: string): string {
  return fieldMeaning(path)?.split(';')[0] ?? 'A field of the recipe';
}

/** A 0 or 1 at the end is an axis of a pair, but in the list of gaps without a rib. */
function isAxis(keys: readonly string[], i: number): boolean {
  return i === keys.length - 1 && /^[01]$/.test(keys[i]) && !(keys[0] === 'frame' && keys[i - 1] === 'skip');
}

/**
 * Help for a field: meaning, range and unit, as in `Thickness of the body. 0.001 to 1000 mm.`
 *
 * @param scale shown value over that of the model
 */
export function fieldHelp(path: string, unit: string, scale = 1): string {
  const facts = fieldFacts(path);
  const meaning = fieldMeaning(path) ?? facts?.description ?? '';
  const amount = (value: number): string => plain(value * scale);
  const { least = null, most = null, whole = false } = facts ?? {};
  const range = least === null || most === null ? '' : `${amount(least)} to ${amount(most)}`;
  const number = [whole ? 'Whole number,' : '', range, unit].filter((part) => part !== '').join(' ');
  return [meaning, number]
    .filter((part) => part !== '')
    .map((part) => `${part}.`)
    .join(' ');
}

/** Round bounds are told by powers of ten where they are far from one. */
function plain(value: number): string {
  const size = Math.abs(value);
  const text =
    size !== 0 && (size < 1e-3 || size >= 1e6)
      ? Number(value.toPrecision(6)).toExponential().replace('e+', 'e')
      : fieldText(value);
  return text.replace('-', '\u2212');
}
