import type { Setting } from '@flathead/solver';
import { fieldText } from '../format/number.ts';
import type { StudyParameter } from './parameters.ts';

/** A setting of a parameter as it is shown, with its unit. */
export function settingText(setting: Setting, { scale, unit }: StudyParameter): string {
  return typeof setting === 'number'
    ? `${fieldText(Number((setting * scale).toPrecision(4)))} ${unit}`
    : String(setting);
}
