import { z } from 'zod';
import { Fault } from '../fault/fault.ts';
import type { HeadModel } from '../model/head-model.ts';
import { checkHeadModel } from '../model/read.ts';
import { type Place, placesOf, valueAt, withMaterialOf, withValue } from './model-path.ts';

const path = z.string().min(1).max(500);

/** What a study varies, without the values it takes. */
export const parameterFields = {
  name: z.string().min(1).max(200).optional().describe('the path if left out'),
  path: z.union([path, z.array(path).min(1).max(100)]).describe('in the head model; several are set together'),
  as: z
    .enum(['value', 'offset', 'factor'])
    .optional()
    .describe('what a number is: the value itself, added to that of the model, or a factor of it; value if left out'),
  signs: z
    .array(z.union([z.literal(1), z.literal(-1)]))
    .max(1000)
    .optional()
    .describe('of a value or an offset, one for each path: -1 where it is mirrored'),
};

export const parameterSchema = z.strictObject(parameterFields);
export type Parameter = z.infer<typeof parameterSchema>;

/** What a parameter can be set to. */
export const settingSchema = z.union([z.number(), z.string().max(200), z.boolean()]);
export type Setting = z.infer<typeof settingSchema>;

/** A parameter and the places of the model it stands for. */
export interface PlacedParameter {
  readonly name: string;
  readonly as: 'value' | 'offset' | 'factor';
  readonly targets: readonly { readonly place: Place; readonly nominal: unknown; readonly sign: 1 | -1 }[];
}

/** A model and what is varied in it. */
export interface Variable {
  /** With presets written out where a parameter reaches into them. */
  readonly model: HeadModel;
  readonly parameters: readonly PlacedParameter[];
}

/** @throws Fault SCHEMA for a path that is not there, signs that don't fit, or two parameters of one name */
export function placeParameters(model: HeadModel, parameters: readonly Parameter[]): Variable {
  const paths = parameters.flatMap((parameter) => parameter.path);
  const prepared = paths.reduce(withMaterialOf, model);
  const placed = parameters.map((parameter) => placeParameter(prepared, parameter));
  const again = placed.find(({ name }, i) => placed.findIndex((other) => other.name === name) < i);
  if (again !== undefined)
    throw new Fault(
      'SCHEMA',
      `Two parameters are called "${again.name}". Give one of them a name of its own.`,
      'vary',
      {
        value: again.name,
      },
    );
  return { model: prepared, parameters: placed };
}

function placeParameter(model: HeadModel, { name, path, as = 'value', signs }: Parameter): PlacedParameter {
  const paths = [path].flat();
  const title = name ?? paths.join(' + ');
  const places = paths.flatMap((one) => placesOf(model, one));
  if (places.length === 0)
    throw new Fault('SCHEMA', `${title} stands for nothing: the list it goes through is empty.`, title);
  if (signs !== undefined && signs.length !== places.length)
    throw new Fault(
      'SCHEMA',
      `${title} has ${signs.length} signs for ${places.length} values. Give one sign for each, or leave them out.`,
      title,
      { value: signs.length, expected: places.length },
    );
  const targets = places.map((place, i) => ({ place, nominal: valueAt(model, place), sign: signs?.[i] ?? 1 }));
  const wordy = as === 'value' ? undefined : targets.find(({ nominal }) => typeof nominal !== 'number');
  if (wordy !== undefined)
    throw new Fault(
      'SCHEMA',
      `${title} is varied by ${as === 'offset' ? 'an offset' : 'a factor'}, but the model has no number at ${wordy.place.join('.')}. Give it one there, or vary it "as": "value".`,
      title,
      { value: wordy.nominal ?? null, expected: 'a number in the model' },
    );
  return { name: title, as, targets };
}

/**
 * The model with its parameters set, checked against the schema.
 *
 * @param settings for each parameter one setting, or one for each of its targets
 * @throws Fault of the schema, with the path in the model
 */
export function variantOf(
  { model, parameters }: Variable,
  settings: readonly (Setting | readonly number[])[],
): HeadModel {
  let tree: unknown = model;
  parameters.forEach(({ as, targets }, i) => {
    const setting = settings[i];
    targets.forEach(({ place, nominal, sign }, k) => {
      tree = withValue(tree, place, settle(as, nominal, sign, typeof setting === 'object' ? setting[k] : setting));
    });
  });
  return checkHeadModel(tree);
}

/** What a target becomes. A sum or a product carries no more digits than were meant: 4.5 + 0.1 is 4.6. */
function settle(as: PlacedParameter['as'], nominal: unknown, sign: 1 | -1, setting: Setting): unknown {
  if (typeof setting !== 'number') return setting;
  if (as === 'value') return sign * setting + 0;
  if (typeof nominal !== 'number') return setting;
  return Number((as === 'offset' ? nominal + sign * setting : nominal * setting).toPrecision(15));
}
