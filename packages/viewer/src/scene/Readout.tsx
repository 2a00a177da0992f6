import type { CaseResult } from '@flathead/solver';
import { fieldSampler } from '../buffers/field-sampler.ts';
import { leastCovering } from '../buffers/least-covering.ts';
import { coordinateText, fieldText, forceDigits, signedMicrometres, stressDigits } from '../format/number.ts';
import { shownCase } from '../state/shown-case.ts';
import type { ShownContact } from '../state/shown-contact.ts';
import { useQuantity } from '../state/use-quantity.ts';
import { usePointer, useRun, useView } from '../state/use-workbench.ts';
import styles from './stage.module.css';
import { useStageFrame } from './stage-frame.ts';

/** From the pointer, and from the edge of the stage, px. */
const GAPS = { beside: 16, edge: 4 };

/** The field under the pointer, of the answer shown; beside the numbers that stand on the head. */
export function Readout() {
  const stage = useStageFrame();
  const hover = usePointer((pointer) => pointer.hover);
  const result = useRun(({ solved }) => solved?.result);
  const caseName = useView((view) => view.caseName);
  const { tension, contact } = useQuantity();
  const limit = useRun(({ solved }) => solved?.model.limits.bow);
  if (hover === null || !result || limit === undefined) return null;
  const { x, y, site, screen } = hover;
  const shown = shownCase(result, caseName);
  const deviation = fieldSampler(result.mesh, shown.deviation).at(x, y);
  if (deviation === null) return null;
  const stress = tension === null ? null : fieldSampler(result.mesh, tension.bodyTension).at(x, y);
  const lost = contact === null || site === null ? null : fieldSampler(result.mesh, contact.lost).at(x, y);
  const [value, ofSite] =
    stress !== null
      ? [`${stressDigits(stress)} MPa`, null]
      : contact !== null && lost !== null
        ? contactWords(contact, lost, site)
        : [`${signedMicrometres(deviation)} µm`, bowWords(shown, site, limit)];
  return (
    <output
      className={styles.readout}
      data-testid="readout"
      ref={(element) => {
        if (element === null || stage.canvas === null) return;
        const own = { width: element.offsetWidth, height: element.offsetHeight };
        const room = { width: stage.canvas.clientWidth, height: stage.canvas.clientHeight };
        const [left, top] = leastCovering(screen, own, room, stage.taken, GAPS);
        element.style.transform = `translate(${left}px, ${top}px)`;
      }}
    >
      <strong>
        {value}
        {ofSite !== null && ' here'}
      </strong>
      {ofSite !== null && <span>{ofSite}</span>}
      <span>
        {site ? `site ${site}` : 'outside the sites'}, x {coordinateText(tenth(x))}, y {coordinateText(tenth(y))} mm
      </span>
    </output>
  );
}

/** What the label of the site tells beside the point: its largest bow, and what is allowed. */
function bowWords({ sites }: CaseResult, name: string | null, limit: number): string | null {
  const site = sites.find((other) => other.name === name);
  if (site === undefined) return null;
  return `largest of ${name} ${signedMicrometres(site.bow)}, limit ${fieldText(Number((limit * 1000).toPrecision(6)))}`;
}

function contactWords(
  { left, preload }: ShownContact,
  lost: number,
  name: string | null,
): readonly [string, string | null] {
  const least = name === null ? null : (left.get(name) ?? null);
  // A probe that the device sets presses on the board with a force that the model does not give.
  if (least === null) return ['not known', null];
  return [`${forceDigits(Math.max(0, preload - lost))} N left`, `least of ${name} ${forceDigits(least)}`];
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
