import { Fault } from '../fault/fault.ts';
import { didYouMean } from '../plate/near-names.ts';

const MM: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, um: 1e-3, nm: 1e-6, mil: 0.0254, inch: 25.4 };
/** Standard gravity 9.80665 m/s2 and the pound of 0.45359237 kg are exact by definition. */
const NEWTONS: Readonly<Record<string, number>> = {
  N: 1,
  mN: 1e-3,
  cN: 1e-2,
  gf: 9.80665e-3,
  kgf: 9.80665,
  lbf: 9.80665 * 0.45359237,
  ozf: (9.80665 * 0.45359237) / 16,
};

const LENGTH_WORDS: Readonly<Record<string, string>> = {
  ...{ mm: 'mm', millimeter: 'mm', millimetre: 'mm', millimeters: 'mm', millimetres: 'mm', cm: 'cm', m: 'm' },
  ...{
    um: 'um',
    µm: 'um',
    '\ufffdm': 'um',
    μm: 'um',
    micron: 'um',
    microns: 'um',
    micrometer: 'um',
    micrometre: 'um',
    nm: 'nm',
  },
  ...{ mil: 'mil', mils: 'mil', thou: 'mil', in: 'inch', inch: 'inch', inches: 'inch', '"': 'inch' },
};
const FORCE_WORDS: Readonly<Record<string, string>> = {
  ...{ n: 'N', newton: 'N', newtons: 'N', mn: 'mN', cn: 'cN', g: 'gf', gf: 'gf', gram: 'gf', grams: 'gf' },
  ...{ kgf: 'kgf', kg: 'kgf', lbf: 'lbf', lb: 'lbf', ozf: 'ozf', oz: 'ozf' },
};

export type Quantity = 'length' | 'force';

/** Unit that a word stands for, such as `um` for `microns`; `null` for any other word. */
export function unitOf(word: string, quantity: Quantity): string | null {
  const words = quantity === 'length' ? LENGTH_WORDS : FORCE_WORDS;
  const key = word.trim().toLowerCase();
  return Object.hasOwn(words, key) ? words[key] : null;
}

/** Units that are known. */
export function unitNames(quantity: Quantity): string[] {
  return Object.keys(quantity === 'length' ? MM : NEWTONS);
}

/** mm or N in one of the unit. */
export function factorOf(unit: string, quantity: Quantity): number {
  return (quantity === 'length' ? MM : NEWTONS)[unit];
}

/**
 * Unit that a caller asks for.
 *
 * @throws Fault USAGE for an unknown one
 */
export function askedUnit(word: string | undefined, quantity: Quantity): string | null {
  if (word === undefined) return null;
  const unit = unitOf(word, quantity);
  if (unit !== null) return unit;
  const known = unitNames(quantity);
  throw new Fault(
    'USAGE',
    `"${word}" is no unit of ${quantity} that is known.${didYouMean(word, known)} Use ${known.join(', ')}.`,
    '',
    { value: word, expected: known },
  );
}
