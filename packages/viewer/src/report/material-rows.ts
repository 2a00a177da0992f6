import { type HeadModel, type Material, materialPresets } from '@flathead/solver';
import type { NumberRows } from '../format/number-rows.ts';
import { NONE } from './cells.ts';
import { plain } from './shape-words.ts';

/** Materials in use, their values and where those come from. */
export function materialRows(model: HeadModel): NumberRows {
  const names = [model.body.material, model.frame?.material, ...model.fasteners.map(({ into }) => into)];
  const used = [...new Set(names.filter((name) => name !== undefined))];
  return {
    columns: ['Material', 'E, GPa', 'ν', 'Expansion, 10⁻⁶/K', 'Strength, MPa', 'Weibull modulus', 'Values from'],
    rows: used.map((name) => {
      const { material, from } = found(model, name);
      if (material === undefined) return [name, NONE, NONE, NONE, NONE, NONE, 'unknown'];
      const { E, nu, expansion, strength, weibull, modulus } = material;
      const hot = modulus?.map(([at, e]) => `${plain(e / 1000)} at ${plain(at)} °C`).join(', ');
      return [
        name,
        `${plain(E / 1000)}${hot === undefined ? '' : ` (${hot})`}`,
        plain(nu),
        expansion === undefined ? NONE : plain(Number((expansion * 1e6).toPrecision(6))),
        strength === undefined ? NONE : plain(strength),
        weibull === undefined ? NONE : plain(weibull),
        from,
      ];
    }),
  };
}

function found(model: HeadModel, name: string): { readonly material: Material | undefined; readonly from: string } {
  const own = model.materials ?? {};
  if (Object.hasOwn(own, name)) return { material: own[name], from: own[name].source ?? 'the model, no source given' };
  if (!Object.hasOwn(materialPresets, name)) return { material: undefined, from: 'unknown' };
  const { basis, source } = materialPresets[name];
  return { material: materialPresets[name], from: `${source}${basis === 'memory' ? ' (to be confirmed)' : ''}` };
}
