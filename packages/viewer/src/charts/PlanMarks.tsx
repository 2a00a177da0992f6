import type { Shape } from '@flathead/solver';
import { displayRing } from '../buffers/display-ring.ts';
import { hatchStrokes } from '../buffers/hatch.ts';
import { siteRings } from '../buffers/plan-lines.ts';
import { ringPath, strokePath } from '../buffers/plan-window.ts';
import { screwSize } from '../buffers/screw-size.ts';
import { signedMicrometres } from '../format/number.ts';
import type { Palette } from '../scene/palette.ts';
import { shownCase } from '../state/shown-case.ts';
import type { HeadInCase } from './plan-field.ts';
import styles from './plan-map.module.css';

/** Spacing of the hatch of keep-outs, mm. */
const HATCH = 1.6;
/** A bow below this has no place, mm. */
const NOTHING = 1e-6;
/** Height of letters, and width of one on the average, px. */
const LETTER = { height: 9.5, width: 5.6 };

interface PlanMarksProps {
  readonly head: HeadInCase;
  readonly palette: Palette;
  /** One px of the page in mm. */
  readonly unit: number;
  /** Lower edge of the picture, mm downwards. */
  readonly foot: number;
  /** Whether sites and fasteners carry their names. */
  readonly named: boolean;
  /** Whether sites carry their bows. */
  readonly values: boolean;
}

/** What stands on a map of a head: sites, fasteners, keep-outs, seats, and the place of the largest bow. */
export function PlanMarks({ head, palette, unit, foot, named, values }: PlanMarksProps) {
  const { model, result, caseName } = head;
  const { sites, bow } = shownCase(result, caseName);
  const keepOuts = rings((model.keepOuts ?? []).map(({ shape }) => shape));
  const seats = rings(
    (model.seats ?? []).map((seat) =>
      'shape' in seat ? seat.shape : { circle: seat.diameter, centre: [seat.at[0], seat.at[1]] },
    ),
  );
  const arm = 5 * unit;
  const cross = `M${bow.at[0] - arm} ${-bow.at[1]}h${2 * arm}M${bow.at[0]} ${-bow.at[1] - arm}v${2 * arm}`;
  return (
    <>
      <path className={styles.hair} d={ringPath(seats)} fill="none" stroke={palette.line} strokeDasharray="3 2" />
      <g className={styles.hair} fill="none" stroke={palette.keepOut} opacity={0.75}>
        <path d={ringPath(keepOuts)} />
        <path d={strokePath(keepOuts.flatMap((ring) => hatchStrokes(ring, HATCH)))} opacity={0.7} />
      </g>
      <path className={styles.hair} d={ringPath(siteRings(result.sites))} fill="none" stroke={palette.line} />
      {model.fasteners.map((fastener) => {
        const [x, y] = fastener.at;
        const r = screwSize(fastener).head / 2;
        // Under the screw, or over it at the lower edge.
        const apart = r + 8 * unit;
        const nameAt = -y + apart + 7 * unit > foot ? -y - apart : -y + apart;
        return (
          <g key={fastener.name}>
            <circle cx={x} cy={-y} r={r} fill={palette.screw} stroke={palette.socket} className={styles.hair} />
            <circle cx={x} cy={-y} r={r * 0.42} fill={palette.socket} />
            {named && (
              <Label x={x} y={nameAt} unit={unit}>
                {fastener.name}
              </Label>
            )}
          </g>
        );
      })}
      {named &&
        result.sites.map(({ name, centre: [x, y], field: [width, height] }, i) => {
          const value = values && sites[i] !== undefined ? signedMicrometres(sites[i].bow) : null;
          const room = width / unit / LETTER.width;
          if (height / unit < 12 || name.length > room) return null;
          const two = value !== null && height / unit >= 27 && value.length <= room;
          return (
            <g key={name}>
              <Label x={x} y={-y - (two ? 6 * unit : 0)} unit={unit}>
                {name}
              </Label>
              {two && (
                <Label x={x} y={-y + 6 * unit} unit={unit} strong>
                  {value}
                </Label>
              )}
            </g>
          );
        })}
      {values && Math.abs(bow.value) > NOTHING && (
        <g className={styles.peak}>
          <path d={cross} />
          <path d={cross} />
        </g>
      )}
    </>
  );
}

/** A short text on paper of its own, legible on any colour. */
function Label({
  x,
  y,
  unit,
  strong = false,
  children,
}: {
  x: number;
  y: number;
  unit: number;
  strong?: boolean;
  children: string;
}) {
  const [width, height] = [(children.length * LETTER.width + 5) * unit, (LETTER.height + 2.5) * unit];
  return (
    <g>
      <rect className={styles.plaque} x={x - width / 2} y={y - height / 2} {...{ width, height }} rx={2.5 * unit} />
      <text
        className={styles.label}
        data-strong={strong || undefined}
        x={x}
        y={y + LETTER.height * 0.35 * unit}
        fontSize={LETTER.height * unit}
      >
        {children}
      </text>
    </g>
  );
}

function rings(shapes: readonly Shape[]) {
  return shapes.map(displayRing).filter((ring) => ring !== null);
}
