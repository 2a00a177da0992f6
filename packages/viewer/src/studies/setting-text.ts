import type { Setting } from '@flathead/solver';
import { fieldText } from '../format/number.ts';
import type { StudyParameter } from './parameters.ts';

/** A setting of a parameter as it is shown, with its unit. */
export function settingText(setting: Setting, { scale, unit }: StudyParameter): string {
  return typeof setting === 'number'
    ? `${fieldText(Number((setting * scale).toPrecision(4)))} ${unit}`
    : String(setting);
}

/** `body thickness 5.11 mm, rib width 3 mm`. */
export function settingWords(settings: readonly Setting[], axes: readonly StudyParameter[]): string {
  return settings.map((setting, i) => `${inSentence(axes[i].label)} ${settingText(setting, axes[i])}`).join(', ');
}

/** A label within a sentence: `body thickness`, but `E of the body` and `NE, x`. */
export function inSentence(label: string): string {
  return /^\p{Lu}\p{Ll}/u.test(label) ? label[0].toLowerCase() + label.slice(1) : label;
}
