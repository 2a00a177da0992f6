import type { Setting } from '@flathead/solver';
import { fieldText } from '../format/number.ts';
import type { StudyParameter } from './parameters.ts';

/** A setting of a parameter as it is shown, with its unit. */
export function settingText(setting: Setting, { scale, unit }: StudyParameter): string {
  return typeof setting === 'number'
    ? `${fieldText(Number((setting * scale).toPrecision(4)))} ${unit}`
    : String(setting);
}

/** A value that just passes, to three figures on the side that passes: 5.088 and more is 5.09. */
export function passingDigits(value: number, passes: 'above' | 'below'): string {
  if (value === 0) return '0';
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - 2);
  const steps = Number((value / step).toPrecision(9));
  return fieldText(Number(((passes === 'above' ? Math.ceil(steps) : Math.floor(steps)) * step).toPrecision(3)));
}
