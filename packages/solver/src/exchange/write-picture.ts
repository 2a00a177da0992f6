import type { Ring } from '../geometry/point.ts';
import { shapeRing } from '../geometry/ring.ts';
import type { HeadModel } from '../model/head-model.ts';
import { screws } from '../model/screws.ts';
import { fieldRing } from '../model/site-room.ts';
import type { HeadResult } from '../results/head-result.ts';
import { caseOf } from './case-fields.ts';
import { isoRings } from './iso-rings.ts';
import { BEYOND, hex, rampColour } from './ramp.ts';
import { extentsOf } from './reading.ts';
import { stampLine } from './stamp.ts';
import { xmlText } from './xml-text.ts';

export interface PictureOptions {
  /** The case with the largest bow if left out. */
  readonly case?: string | undefined;
}

/** Bands between none and the limit. */
const BANDS = 7;
/** Room around the head and below it for the key, mm. */
const [MARGIN, KEY] = [4, 12];
const CHORD = 0.02;

/**
 * Plan of a head as SVG, millimetre by millimetre: bands of deviation from the fastener plane over the limit of the bow,
 * hatched beyond it, with outline, frame, sites, fasteners and keep-outs, and a key.
 *
 * @throws Fault SCHEMA for an unknown case
 */
export function headSvg(model: HeadModel, result: HeadResult, options: PictureOptions = {}): string {
  const { mesh, sites } = result;
  const solved = caseOf(result, options.case);
  const { bow: limit } = model.limits;
  const box = extentsOf(Array.from(mesh.x, (x, i) => [x, mesh.y[i]] as const))!;
  const [left, top] = [box.min[0] - MARGIN, -box.max[1] - MARGIN];
  const [width, height] = [box.max[0] - box.min[0] + 2 * MARGIN, box.max[1] - box.min[1] + 2 * MARGIN + KEY];
  const size = Float64Array.from(solved.deviation, Math.abs);
  const plain = path(isoRings(mesh, new Float64Array(size.length), -1));
  const levels = Array.from({ length: BANDS }, (_, k) => k / BANDS);
  const bands = levels.slice(1).map((share) => ({ share, d: path(bothSides(share * limit)) }));
  const beyond = path(bothSides(limit));
  const ring = (shape: Parameters<typeof shapeRing>[0]) => path([shapeRing(shape, { chord: CHORD })]);
  const line = (d: string, style: string) => `<path d="${d}" fill="none" ${style}/>`;
  const label = (text: string, x: number, y: number, more = '') =>
    `<text x="${short(x)}" y="${short(y)}" font-family="sans-serif" font-size="2" ${more}>${xmlText(text)}</text>`;
  const colour = (share: number) => hex(rampColour(share + 0.5 / BANDS));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${short(width)}mm" height="${short(height)}mm" viewBox="${[left, top, width, height].map(short).join(' ')}">`,
    `<title>${xmlText(model.name)}</title>`,
    `<desc>${xmlText(`${stampLine(model)}, case ${solved.name}: deviation from the fastener plane over the limit of ${short(1000 * limit)} um`)}</desc>`,
    `<defs><pattern id="beyond" width="1.2" height="1.2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="1.2" height="1.2" fill="${BEYOND}"/><path d="M0 0V1.2" stroke="#fff" stroke-width="0.5"/></pattern></defs>`,
    `<g id="bands" fill-rule="evenodd" stroke="none"><path d="${plain}" fill="${colour(0)}"/>`,
    ...bands.filter(({ d }) => d !== '').map(({ share, d }) => `<path d="${d}" fill="${colour(share)}"/>`),
    ...(beyond === '' ? [] : [`<path d="${beyond}" fill="url(#beyond)"/>`]),
    '</g>',
    `<g id="outline">${line(ring(model.body.outline), 'stroke="#222" stroke-width="0.25"')}${(model.body.openings ?? []).map((shape) => line(ring(shape), 'stroke="#222" stroke-width="0.25"')).join('')}</g>`,
    ...(model.frame === undefined
      ? []
      : [
          `<g id="frame">${[model.frame.outer, model.frame.window].map((shape) => line(ring(shape), 'stroke="#555" stroke-width="0.2"')).join('')}</g>`,
        ]),
    `<g id="sites">${sites.map((site) => line(path([fieldRing(site)]), 'stroke="#111" stroke-width="0.15"') + label(site.name, site.centre[0], -site.centre[1] + 0.7, 'text-anchor="middle"')).join('')}</g>`,
    `<g id="keep-outs">${(model.keepOuts ?? []).map(({ shape }) => line(ring(shape), 'stroke="#8a2be2" stroke-width="0.2" stroke-dasharray="1 0.6"')).join('')}</g>`,
    `<g id="fasteners">${model.fasteners.map(fastener).join('')}</g>`,
    `<g id="key">${key()}</g>`,
    '</svg>',
    '',
  ].join('\n');

  function bothSides(level: number): (readonly (readonly [number, number])[])[] {
    return [
      ...isoRings(mesh, solved.deviation, level),
      ...isoRings(
        mesh,
        solved.deviation.map((value) => -value),
        level,
      ),
    ];
  }

  function fastener({ name, at: [x, y], screw, bearing }: HeadModel['fasteners'][number]): string {
    const diameter = (screw !== undefined && Object.hasOwn(screws, screw) ? screws[screw].head : bearing) ?? 1;
    return `<circle cx="${short(x)}" cy="${short(-y)}" r="${short(diameter / 2)}" fill="#fff" fill-opacity="0.7" stroke="#222" stroke-width="0.2"/>${label(name, x, -y + 0.7, 'text-anchor="middle"')}`;
  }

  function key(): string {
    const [x, y, w] = [left + MARGIN, top + height - KEY + 1, Math.min(8, (width - 2 * MARGIN) / (BANDS + 1))];
    const boxes = levels.map(
      (share, k) =>
        `<rect x="${short(x + k * w)}" y="${short(y)}" width="${short(w)}" height="3" fill="${colour(share)}"/>${label(micrometres(share * limit), x + k * w, y + 5.5)}`,
    );
    const last = `<rect x="${short(x + BANDS * w)}" y="${short(y)}" width="${short(w)}" height="3" fill="url(#beyond)"/>${label(`${micrometres(limit)} um`, x + BANDS * w, y + 5.5)}`;
    return `${boxes.join('')}${last}${label(`${model.name}, case ${solved.name}: bow ${micrometres(Math.abs(solved.bow.value))} um at ${solved.bow.site}`, x, y + 9)}`;
  }
}

function micrometres(mm: number): string {
  return String(Number((1000 * mm).toPrecision(3)));
}

function short(value: number): string {
  return String(Number(value.toFixed(3)) + 0);
}

/** Path data, y turned down. */
function path(rings: readonly (Ring | readonly (readonly [number, number])[])[]): string {
  return rings.map((ring) => `M${ring.map(([x, y]) => `${short(x)} ${short(-y)}`).join('L')}Z`).join('');
}
