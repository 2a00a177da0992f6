import { Fault } from '../fault/fault.ts';
import { checkSchema } from '../plate/check-schema.ts';
import { readJson } from '../plate/read-json.ts';
import { type HeadModel, headModelSchema } from './head-model.ts';

/**
 * Head model of a JSON text, checked against its schema. What it means as a head is checked when it is compiled.
 *
 * @throws Fault that says where the text or a value is wrong
 */
export function readHeadModel(text: string): HeadModel {
  return checkHeadModel(readJson(text));
}

/**
 * Head model of data that is already parsed, such as what a page or a worker was handed.
 *
 * @throws Fault SCHEMA, OUT_OF_RANGE or TOO_LARGE with the path of the first thing wrong
 */
export function checkHeadModel(value: unknown): HeadModel {
  if (typeof value === 'object' && value !== null && 'plate' in value && !('flathead' in value))
    throw new Fault(
      'SCHEMA',
      'This is a plate problem (it has the key "plate"), not a head model. Use `flathead plate` on it.',
      'plate',
      { expected: 'a head model, with "flathead": 1' },
    );
  return checkSchema(headModelSchema, ofThisVersion(value), 'head model');
}

/** Format of the models that this program writes. */
const NEWEST = 1;

/** The model in the newest format. There has been one only; what turns an older one into the next belongs here. */
function ofThisVersion(value: unknown): unknown {
  const version = typeof value === 'object' && value !== null && 'flathead' in value ? value.flathead : NEWEST;
  if (typeof version === 'number' && Number.isInteger(version) && version > NEWEST)
    throw new Fault(
      'SCHEMA',
      `The model has format ${version}; this program reads up to ${NEWEST}. Open it with a newer version, or save it for format ${NEWEST} there.`,
      'flathead',
      { value: version, expected: NEWEST },
    );
  return value;
}
