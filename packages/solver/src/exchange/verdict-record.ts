import { z } from 'zod';
import type { HeadModel } from '../model/head-model.ts';
import type { HeadResult } from '../results/head-result.ts';
import { stampOf } from './stamp.ts';

const outcome = z.enum(['pass', 'marginal', 'fail']);
const point = z.tuple([z.number(), z.number()]).describe('[x, y], mm');

const criterion = z.object({
  criterion: z.string(),
  outcome,
  unit: z.string().describe('of value, limit and error; "1" for a ratio'),
  bound: z.enum(['most', 'least']).describe('whether the value may be at most or must be at least the limit'),
  value: z.number(),
  limit: z.number(),
  error: z.number().nullable().describe('estimated numerical error of the value'),
  case: z.string().describe('worst load case'),
  site: z.string().describe('name of the site, or of the fastener, where it is worst'),
});

const loadCase = z.object({
  name: z.string(),
  bow: z.object({ value: z.number().describe('mm, away from the board positive'), at: point, site: z.string() }),
  flatness: z.number().describe('minimum zone, mm'),
  load: z.number().describe('N along +z'),
  sites: z.array(z.object({ name: z.string(), bow: z.number(), at: point, flatness: z.number() })),
  fasteners: z.array(
    z.object({
      name: z.string(),
      at: point,
      reaction: z.number().describe('on the head along +z, N'),
      w: z.number().describe('deflection of the head at its seat, mm'),
      holds: z.boolean(),
    }),
  ),
});

const record = z
  .object({
    verdict: z.literal(1).describe('format version'),
    program: z.string(),
    version: z.string(),
    model: z.object({ name: z.string(), hash: z.string().regex(/^[0-9a-f]{12}$/) }),
    outcome,
    sentence: z.string(),
    remarks: z.array(z.string()),
    criteria: z.array(criterion),
    cases: z.array(loadCase),
  })
  .meta({ id: 'Verdict', title: 'Flathead verdict' });

/** The verdict on a head with what it rests on, mm and N. */
export type VerdictRecord = z.infer<typeof record>;

/** Plain data for a file or another program, as {@link verdictSchema} describes it. */
export function verdictRecord(model: HeadModel, { verdict, cases }: HeadResult): VerdictRecord {
  const { program, version, hash, model: name } = stampOf(model);
  const at = ([x, y]: readonly [number, number]): [number, number] => [x, y];
  return record.parse({
    ...{ verdict: 1, program, version, model: { name, hash } },
    ...{ outcome: verdict.outcome, sentence: verdict.sentence, remarks: verdict.remarks, criteria: verdict.criteria },
    cases: cases.map(({ name: title, bow, flatness, load, sites, fasteners }) => ({
      name: title,
      bow: { ...bow, at: at(bow.at) },
      flatness: flatness.minimumZone,
      load,
      sites: sites.map((site) => ({ ...site, at: at(site.at) })),
      fasteners: fasteners.map((fastener) => ({ ...fastener, at: at(fastener.at) })),
    })),
  });
}

/** JSON Schema (draft 2020-12) of a verdict file, as in `models/schema/`. */
export function verdictSchema(): object {
  return z.toJSONSchema(record);
}
