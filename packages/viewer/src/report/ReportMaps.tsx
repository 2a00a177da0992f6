import type { HeadModel, HeadResult } from '@flathead/solver';
import { Legend } from '../charts/Legend.tsx';
import { PlanMap } from '../charts/PlanMap.tsx';
import { planScale } from '../charts/plan-field.ts';
import { signedMicrometres, stressDigits } from '../format/number.ts';
import { shownCase } from '../state/shown-case.ts';
import { worstOfEach } from './case-columns.ts';
import { bowPlace } from './case-rows.ts';

/** Of the pictures on paper, px. */
const WIDE = 672;
const TALL = 300;
const SITES_TALL = 460;
const SMALL = 328;
const ON_PAPER = 3;
/** More small maps would be no overview. */
const MOST_SMALL = 12;

/** Width of a map of such places that is no taller than so much, px. */
function fitted(x: Iterable<number>, y: Iterable<number>, tall: number): number {
  return Math.round(Math.min(WIDE, (tall * span(x)) / span(y)));
}

function span(places: Iterable<number>): number {
  let [least, most] = [Infinity, -Infinity];
  for (const place of places) {
    least = Math.min(least, place);
    most = Math.max(most, place);
  }
  return most - least;
}

/** Left and right, or lower and upper edges of all probe fields, mm. */
function siteEdges({ sites }: HeadResult, axis: 0 | 1): number[] {
  return sites.flatMap(({ centre, field }) => [centre[axis] - field[axis] / 2, centre[axis] + field[axis] / 2]);
}

/** The head in its worst case at full width, its sites enlarged, its tension where that is judged, and the other cases small. */
export function ReportMaps({ model, result }: { model: HeadModel; result: HeadResult }) {
  const worst = shownCase(result, null);
  const head = { model, result, caseName: worst.name };
  const stressed = result.verdict.criteria.find(({ criterion }) => criterion === 'strength');
  const tension = stressed && { model, result, caseName: stressed.case };
  const others = worstOfEach(result.cases).filter(({ name }) => name !== worst.name);
  const scale = tension && planScale(tension, 'tension');
  return (
    <>
      <figure className="report-map">
        <figcaption>
          <span>
            <strong>Bow in the worst case, {worst.name}</strong>: seen from the device side, board behind; hatched
            beyond the limit, cross at the largest
          </span>
          <Legend scale={planScale(head, 'deviation')} caption="Bow, µm" unit="µm" factor={1000} />
        </figcaption>
        <PlanMap
          paper
          head={head}
          width={fitted(result.mesh.x, result.mesh.y, TALL)}
          pixelRatio={ON_PAPER}
          label={`Map of the bow in case ${worst.name}: ${signedMicrometres(worst.bow.value)} micrometres at site ${worst.bow.site}`}
        />
      </figure>
      <figure className="report-map">
        <figcaption>
          <span>
            <strong>Site area, enlarged</strong>: largest bow of each site in case {worst.name}, µm
          </span>
        </figcaption>
        <PlanMap
          paper
          view="sites"
          head={head}
          width={fitted(siteEdges(result, 0), siteEdges(result, 1), SITES_TALL)}
          pixelRatio={ON_PAPER}
          label={`Map of the bow over the site area in case ${worst.name}`}
        />
      </figure>
      {tension && scale && (
        <figure className="report-map">
          <figcaption>
            <span>
              <strong>Tension on the body in its worst case, {tension.caseName}</strong>: the larger of either face
            </span>
            <Legend scale={scale} caption="Tension, MPa" unit="MPa" factor={1} />
          </figcaption>
          <PlanMap
            paper
            quantity="tension"
            head={tension}
            width={WIDE}
            pixelRatio={ON_PAPER}
            label={`Map of the tension on the body, allowed up to ${stressDigits(scale.limit ?? scale.top)} MPa`}
          />
        </figure>
      )}
      {others.length > 0 && (
        <div className="report-small-maps">
          {others.slice(0, MOST_SMALL).map(({ name, bow }) => (
            <figure key={name}>
              <PlanMap
                paper
                detail="outlines"
                head={{ model, result, caseName: name }}
                width={SMALL}
                pixelRatio={ON_PAPER}
                label={`Map of the bow in case ${name}`}
              />
              <figcaption>
                <strong>{name}</strong> {signedMicrometres(bow.value)} µm, {bowPlace(bow)}
              </figcaption>
            </figure>
          ))}
        </div>
      )}
    </>
  );
}
