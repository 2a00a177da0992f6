import { fieldText } from '../../format/number.ts';

/** What a field is called, its unit, and what a value is multiplied with to be shown in it. */
interface Field {
  readonly label: string;
  readonly unit?: string;
  readonly factor?: number;
}

const UM = { unit: 'µm', factor: 1000 };
const PER_CENT = { unit: '%', factor: 100 };

/** Fields by path in the head model; those missing here are called by their path. */
const FIELDS: Readonly<Record<string, Field>> = {
  'body.outline': { label: 'body outline', unit: 'mm' },
  'body.thickness': { label: 'body', unit: 'mm' },
  'body.material': { label: 'body material' },
  'body.openings': { label: 'openings of the body' },
  'sites.columns': { label: 'columns of sites' },
  'sites.rows': { label: 'rows of sites' },
  'sites.pitch': { label: 'site pitch', unit: 'mm' },
  'sites.die': { label: 'die', unit: 'mm' },
  'sites.skip': { label: 'skipped dies' },
  'sites.origin': { label: 'centre of the sites', unit: 'mm' },
  'sites.probes.count': { label: 'probes a site' },
  'sites.probes.field': { label: 'probe field', unit: 'mm' },
  'sites.probes.preload': { label: 'preload of a probe', unit: 'N' },
  'sites.probes.touchdown': { label: 'force of a probe at touchdown', unit: 'N' },
  'sites.probes.rate': { label: 'rate of a probe', unit: 'N/mm' },
  'sites.probes.relax': { label: 'probes that give way' },
  'sites.probes.kind': { label: 'probes' },
  'sites.probes.holes': { label: 'probe holes' },
  'sites.probes.holes.pitch': { label: 'pitch of probe holes', unit: 'mm' },
  'sites.probes.holes.diameter': { label: 'probe holes', unit: 'mm' },
  frame: { label: 'frame' },
  'frame.outer': { label: 'frame outline', unit: 'mm' },
  'frame.window': { label: 'frame window', unit: 'mm' },
  'frame.material': { label: 'frame material' },
  'frame.thickness': { label: 'frame', unit: 'mm' },
  'frame.side': { label: 'side of the frame' },
  'frame.join': { label: 'joint of the frame' },
  'limits.bow': { label: 'limit of bow', ...UM },
  'limits.flatness': { label: 'limit of flatness', ...UM },
  'limits.contactForce': { label: 'least contact force', unit: 'N' },
  'limits.margin': { label: 'margin kept in hand', ...PER_CENT },
  'limits.strengthFactor': { label: 'least strength factor' },
  'limits.failureProbability': { label: 'limit of failure probability' },
  'limits.fastener': { label: 'limit of fastener use', ...PER_CENT },
  theory: { label: 'plate theory' },
  mesh: { label: 'mesh' },
  materials: { label: 'own materials' },
};

/** Paths that are one field: a pitch stands instead of a die and skipped dies. */
export const TOGETHER: readonly (readonly string[])[] = [['sites.pitch', 'sites.die', 'sites.skip']];

/** What the solver takes where the model leaves a field out, in words. */
const STANDARD: Readonly<Record<string, unknown>> = {
  'sites.probes.kind': 'floating',
  'sites.probes.relax': false,
  'sites.origin': [0, 0],
  theory: 'shear',
};

/** A field that changed, in words. */
export function fieldWords(path: string, before: unknown, after: unknown): string {
  const { label, unit, factor = 1 } = FIELDS[path] ?? { label: path };
  const [from, to] = [before ?? STANDARD[path], after ?? STANDARD[path]];
  const [a, b] = [valueText(from, factor), valueText(to, factor)];
  const tail = unit === undefined ? '' : ` ${unit}`;
  if (to === undefined) return a === null ? `${label} removed` : `no ${label} any more, was ${a}${tail}`;
  if (from === undefined) return b === null ? `${label} added` : `${label} ${b}${tail}, before none`;
  return a === null || b === null || a === b ? `${label} changed` : `${label} ${a} \u2192 ${b}${tail}`;
}

/** How sites came to be spaced, where that is told by other fields than before; `null` where the same fields tell it. */
export function spacingWords(before: Spacing, after: Spacing): string | null {
  if ((before.pitch === undefined) === (after.pitch === undefined)) return null;
  return `sites ${spacingText(after)}, before ${spacingText(before)}`;
}

interface Spacing {
  readonly pitch?: unknown;
  readonly die?: unknown;
  readonly skip?: unknown;
}

function spacingText({ pitch, die, skip }: Spacing): string {
  if (pitch !== undefined) return `at a pitch of ${valueText(pitch)} mm`;
  return `on dies of ${valueText(die)} mm, ${valueText(skip)} skipped`;
}

/** A value for people; `null` where it takes more than a few words. */
export function valueText(value: unknown, factor = 1): string | null {
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return numberText(value * factor);
  if (Array.isArray(value)) {
    const numbers = value.length > 0 && value.length < 3 && value.every((item) => typeof item === 'number');
    return numbers ? value.map((item: number) => numberText(item * factor)).join(' × ') : null;
  }
  if (typeof value !== 'object' || value === null) return null;
  if ('rectangle' in value) return valueText(value.rectangle);
  if ('circle' in value) return `⌀ ${valueText(value.circle)}`;
  if ('polygon' in value && Array.isArray(value.polygon)) return `polygon of ${value.polygon.length} corners`;
  return null;
}

/** Small numbers by powers of ten; the field would show them as zero. */
function numberText(value: number): string {
  const text = value !== 0 && Math.abs(value) < 1e-3 ? String(Number(value.toPrecision(3))) : fieldText(value);
  return text.replaceAll('-', '−');
}
