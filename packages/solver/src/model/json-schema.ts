import { z } from 'zod';
import { plateProblemSchema } from '../plate/plate-problem.ts';
import { headModelSchema } from './head-model.ts';

/** JSON Schema (draft 2020-12) of both kinds of model file, by the name of its file in `models/schema/`. */
export function modelSchemas(): Readonly<Record<'head-model' | 'plate-problem', object>> {
  return { 'head-model': z.toJSONSchema(headModelSchema), 'plate-problem': z.toJSONSchema(plateProblemSchema) };
}
