import type { DxfSections } from './dxf-records.ts';
import { askedUnit, factorOf } from './units.ts';

/** Codes of the header variable for the unit of a drawing, as far as lengths of parts are drawn in them. */
const UNIT_CODES: Readonly<Record<number, { readonly name: string; readonly mm: number }>> = {
  1: { name: 'inch', mm: 25.4 },
  2: { name: 'foot', mm: 304.8 },
  4: { name: 'mm', mm: 1 },
  5: { name: 'cm', mm: 10 },
  6: { name: 'm', mm: 1000 },
  8: { name: 'microinch', mm: 25.4e-6 },
  9: { name: 'mil', mm: 0.0254 },
  11: { name: 'angstrom', mm: 1e-7 },
  12: { name: 'nm', mm: 1e-6 },
  13: { name: 'um', mm: 1e-3 },
  14: { name: 'dm', mm: 100 },
};
/** mm in a unit of a drawing: the one asked for, that of its header, or a guess. @throws Fault USAGE */
export function unitOfDrawing({ header }: DxfSections, asked: string | undefined) {
  const given = askedUnit(asked, 'length');
  const text = header.get('$INSUNITS')?.find((group) => group.code === 70)?.value ?? '0';
  const code = Number(text);
  const said = Object.hasOwn(UNIT_CODES, code) ? UNIT_CODES[code] : null;
  if (given !== null) {
    const other = said !== null && said.name !== given;
    return {
      factor: factorOf(given, 'length'),
      unit: { length: given, basis: 'given' as const },
      guesses: other ? [`The header says ${said.name}, but ${given} was asked for and is used.`] : [],
    };
  }
  if (said !== null) return { factor: said.mm, unit: { length: said.name, basis: 'file' as const }, guesses: [] };
  const measure = header.get('$MEASUREMENT')?.find((group) => group.code === 70)?.value;
  const unit = measure === '0' ? 'inch' : 'mm';
  const because =
    code !== 0
      ? `"${text.slice(0, 12)}" in the header is no unit that parts are drawn in`
      : measure === undefined
        ? 'the header gives no unit'
        : `the header says no more than ${measure === '0' ? 'imperial' : 'metric'}`;
  return {
    factor: factorOf(unit, 'length'),
    unit: { length: unit, basis: 'guessed' as const },
    guesses: [`Lengths are taken as ${unit}: ${because}. Give the unit if that is wrong.`],
  };
}
