import type { XmlElement } from '@rgrove/parse-xml';
import type { Affine } from './curve.ts';
import { lengthOf, PER_UNIT, PIXEL } from './svg-length.ts';
import { askedUnit, factorOf } from './units.ts';

/** Map of a drawing to mm, y turned up, by the size of its page and its viewBox, or by the unit asked for. @throws Fault USAGE */
export function scaleOf(root: XmlElement, asked: string | undefined) {
  const given = askedUnit(asked, 'length');
  const { width = '', height = '', viewBox = '', preserveAspectRatio = '' } = root.attributes;
  const [w, h] = [sizeOf(width), sizeOf(height)];
  const numbers = viewBox
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const isBox = numbers.length === 4 && numbers.every(Number.isFinite) && numbers[2] > 0 && numbers[3] > 0;
  const [x, y, across, down] = isBox ? numbers : [0, 0, 0, 0];
  const flipped = (mm: number, upward = mm): Affine => [mm, 0, 0, -upward, -mm * x, upward * (y + down)];
  const origin = isBox ? ['The origin is the lower left corner of the page.'] : [];
  const size = w ?? h;
  const [sx, sy] = [(w ?? size)?.mm ?? 0, (h ?? size)?.mm ?? 0];
  const physical = size !== null && size.unit !== '' && size.unit !== 'px';
  const scales: [number, number] =
    w === null ? [sy / down, sy / down] : h === null ? [sx / across, sx / across] : [sx / across, sy / down];
  if (given !== null) {
    const mm = factorOf(given, 'length');
    const other = isBox && physical && Math.abs(Math.min(...scales) / mm - 1) > 1e-3;
    return {
      map: flipped(mm),
      unit: { length: given, basis: 'given' as const },
      guesses: [
        ...origin,
        ...(other
          ? [
              `The drawing makes a unit ${Number(Math.min(...scales).toPrecision(4))} mm by its size on the page, but ${given} was asked for and is used.`,
            ]
          : []),
      ],
    };
  }
  if (!isBox || size === null)
    return {
      map: flipped(PIXEL),
      unit: { length: 'px', basis: 'guessed' as const },
      guesses: [...origin, PIXELS],
    };
  const uneven = Math.abs(scales[0] / scales[1] - 1) > 1e-3;
  const stretched = uneven && preserveAspectRatio.trim() === 'none';
  return {
    map: stretched ? flipped(...scales) : flipped(Math.min(...scales)),
    unit: {
      length: size.unit === '' ? 'px' : size.unit,
      basis: physical ? ('file' as const) : ('guessed' as const),
    },
    guesses: [
      ...origin,
      ...(stretched ? ['The drawing is stretched unevenly, as it says.'] : []),
      ...(uneven && !stretched ? ['Width, height and viewBox do not fit each other; the smaller scale is used.'] : []),
      ...(physical ? [] : [PIXELS]),
    ],
  };
}

const PIXELS =
  'One unit is taken as a CSS pixel, 1/96 inch: the drawing gives no physical size. Give the unit if that is wrong.';

/** Width or height of the page, mm; `null` where it is none that is above 0. */
function sizeOf(text: string): { readonly mm: number; readonly unit: string } | null {
  const length = lengthOf(text);
  return length === null || !(length.value > 0)
    ? null
    : { mm: length.value * PER_UNIT[length.unit], unit: length.unit };
}
