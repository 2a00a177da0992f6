import { Fault } from '../../fault/fault.ts';
import type { Setting } from '../parameter.ts';
import type { SweepAxis } from './plan.ts';

/** Values of an axis in their order. Evenly spaced ones carry no more digits than were meant: 0.3, not 0.30000000000000004. */
export function axisValues({ values }: SweepAxis): readonly Setting[] {
  if (Array.isArray(values)) return values;
  const { from, to, count } = values;
  return Array.from({ length: count }, (_, i) =>
    Number(((from * (count - 1 - i) + to * i) / (count - 1)).toPrecision(12)),
  );
}

/**
 * An axis of a text such as `body.thickness=3..6:7` (7 values from 3 to 6) or `body.material=alumina-96,peek`; paths joined
 * by `+` are set together.
 *
 * @throws Fault USAGE
 */
export function readAxis(text: string): SweepAxis {
  const [, paths, values] = /^([^=]+)=(.+)$/.exec(text) ?? [];
  if (paths === undefined || values === undefined) return unreadable(text);
  const path = paths.split('+').map((one) => one.trim());
  const [, from, to, count] = /^\s*(\S+?)\.\.(\S+?):(\d+)\s*$/.exec(values) ?? [];
  if (from === undefined) {
    const settings = values.split(',').map(readSetting);
    return settings.includes('') ? unreadable(text) : { path, values: settings };
  }
  const range = { from: Number(from), to: Number(to), count: Number(count) };
  return Object.values(range).every(Number.isFinite) ? { path, values: range } : unreadable(text);
}

/** A number, true, false or a word, as in a table. */
export function readSetting(text: string): Setting {
  const word = text.trim();
  if (word === 'true' || word === 'false') return word === 'true';
  const number = Number(word);
  return word !== '' && Number.isFinite(number) ? number : word;
}

function unreadable(text: string): never {
  throw new Fault(
    'USAGE',
    `"${text}" does not say what to vary. Write path=from..to:count or path=value,value, such as body.thickness=3..6:7.`,
    '',
    { value: text, expected: 'path=from..to:count' },
  );
}
