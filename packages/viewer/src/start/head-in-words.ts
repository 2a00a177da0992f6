import { type HeadModel, siteLayout } from '@flathead/solver';
import { ribLines } from '../state/rib-lines.ts';
import { boxOf } from '../state/shape-box.ts';

/** A head in one sentence: sites and what they push with, body and frame, ribs, screws. */
export function headInWords(model: HeadModel): string {
  const { sites, body, frame, fasteners } = model;
  const ribs = (frame?.ribs ?? []).flatMap((rib) => ribLines(model, rib)).length;
  const count = siteLayout(sites).length;
  const { count: probes, preload, field } = sites.probes;
  const [width, height] = boxOf(body.outline);
  const force = count * probes * preload;
  return [
    `${count} ${count === 1 ? 'site' : 'sites'} of ${field[0]} × ${field[1]} mm push with ${force.toFixed(force < 10 ? 1 : 0)} N in all`,
    `body ${width} × ${height} mm${frame ? `, frame ${boxOf(frame.outer).join(' × ')} mm` : ''}`,
    ...(ribs === 0 ? [] : [`${ribs} ${ribs === 1 ? 'rib' : 'ribs'}`]),
    `${fasteners.length} screws`,
  ]
    .join('; ')
    .concat('.');
}
