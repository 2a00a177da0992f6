import { Fault } from '../fault/fault.ts';
import type { HeadModel, Material } from './head-model.ts';
import { ASSEMBLED } from './heat.ts';
import { findMaterial } from './materials.ts';

/**
 * The model as it is at the uniform temperature of a case: body and frame with their Young's moduli there, where the
 * material says how E depends on temperature; others keep theirs.
 *
 * @throws Fault OUT_OF_RANGE beyond what is known of a material
 */
export function atTemperature(model: HeadModel, index: number): HeadModel {
  const { temperature = ASSEMBLED } = model.cases[index];
  if (temperature === ASSEMBLED) return model;
  const names = [model.body.material, ...(model.frame === undefined ? [] : [model.frame.material])];
  const hot = names.flatMap((name) => {
    const material = findMaterial(model, name, 'body.material');
    return material.modulus === undefined
      ? []
      : [[name, { ...material, E: modulusAt(material, material.modulus, name) }] as const];
  });
  return hot.length === 0 ? model : { ...model, materials: { ...model.materials, ...Object.fromEntries(hot) } };

  /** Straight between the temperatures given; below all of them that of the coldest, a per cent or two too soft at -60 degC. */
  function modulusAt({ E }: Material, table: NonNullable<Material['modulus']>, name: string): number {
    const points = [[ASSEMBLED, E] as const, ...table].sort((a, b) => a[0] - b[0]);
    const above = points.findIndex(([t]) => t >= temperature);
    if (above < 0) {
      const [last] = points[points.length - 1];
      throw new Fault(
        'OUT_OF_RANGE',
        `Case "${model.cases[index].name}" is at ${temperature} degC, but E of ${name} is known up to ${last} degC. Give it there under "modulus" of a material of your own, or leave "modulus" out to keep E as it is.`,
        `cases.${index}.temperature`,
        { value: temperature, expected: `at most ${last}` },
      );
    }
    if (above === 0) return points[0][1];
    const [[t0, e0], [t1, e1]] = [points[above - 1], points[above]];
    return t1 === t0 ? e1 : e0 + ((e1 - e0) * (temperature - t0)) / (t1 - t0);
  }
}
