import { z } from 'zod';
import { didYouMean } from './near-names.ts';

/** A value as a message shows it: short, and never the whole of a list. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}...` : value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

/**
 * What a schema issue says about its value, to follow the name of the value: `is -3; expected 0.001 or more`.
 * Handed to zod as its error map, since only there the schema that complains is at hand.
 */
export function issueWording(issue: z.core.$ZodRawIssue): string {
  const { input, inst } = issue;
  switch (issue.code) {
    case 'invalid_type':
      return input === undefined
        ? `is missing; add it: ${form(inst)}${meaning(inst)}`
        : `is ${shown(input)}; expected ${issue.expected === 'int' && Number.isFinite(input) ? 'a whole number' : form(inst)}${meaning(inst)}`;
    case 'invalid_value': {
      const hint = typeof input === 'string' ? didYouMean(input, issue.values.map(String)) : '';
      const expected = issue.values.map((value) => JSON.stringify(value)).join(' or ');
      return input === undefined
        ? `is missing; add it: ${expected}`
        : `is ${shown(input)}; expected ${expected}.${hint}`;
    }
    case 'too_small':
    case 'too_big':
      return outOfRange(issue);
    case 'unrecognized_keys': {
      const known = knownKeys(inst);
      return issue.keys
        .slice(0, 5)
        .map((key) => `has the unknown key ${shown(key)}.${didYouMean(key, known) || ' Remove it.'}`)
        .concat(known.length > 0 ? `Known here: ${known.join(', ')}` : [])
        .join(' ');
    }
    case 'invalid_union':
      return noForm(input, inst instanceof z.ZodUnion ? inst.options : []);
    default:
      return `is ${shown(input)}, which is not allowed here`;
  }
}

type RangeIssue = Extract<z.core.$ZodRawIssue, { code: 'too_small' | 'too_big' }>;

function outOfRange(issue: RangeIssue): string {
  const { input, origin, inclusive } = issue;
  const small = issue.code === 'too_small';
  const bound = small ? issue.minimum : issue.maximum;
  if (origin === 'number' || origin === 'int') {
    const range = inclusive ? `${bound} or ${small ? 'more' : 'less'}` : `${small ? 'above' : 'below'} ${bound}`;
    return `is ${shown(input)}; expected ${range}`;
  }
  const size = Array.isArray(input) || typeof input === 'string' ? input.length : '?';
  const unit = origin === 'string' ? 'characters' : 'entries';
  const range = issue.inst instanceof z.ZodTuple ? 'exactly' : small ? 'at least' : 'at most';
  return `has ${size} ${unit}; expected ${range} ${bound}`;
}

/** Names the forms of a union when none of them can be told to be the one that was meant. */
function noForm(input: unknown, options: readonly unknown[]): string {
  const forms = options.flatMap(leaves);
  const expected = forms.map(form).join(' or ');
  if (input === undefined) return `is missing; add it: ${expected}`;
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    const words = forms.flatMap((option) =>
      option instanceof z.ZodEnum
        ? option.options.map(String)
        : option instanceof z.ZodLiteral
          ? [String(option.value)]
          : [],
    );
    return `is ${shown(input)}; expected ${expected}.${typeof input === 'string' ? didYouMean(input, words) : ''}`;
  }
  const known = [...new Set(forms.flatMap(knownKeys))];
  const hints = Object.keys(input)
    .filter((key) => !known.includes(key))
    .slice(0, 5)
    .map((key) => ` The key ${shown(key)} is unknown.${didYouMean(key, known)}`);
  const keys = Object.keys(input).slice(0, 8).join(', ');
  return `has ${keys === '' ? 'no keys' : `the keys ${keys}`}; expected ${expected}.${hints.join('')}`;
}

function leaves(option: unknown): unknown[] {
  return option instanceof z.ZodUnion ? option.options.flatMap(leaves) : [option];
}

/** What a value of the schema looks like. */
function form(schema: unknown): string {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable) return form(schema.unwrap());
  if (schema instanceof z.ZodNumber) return 'a finite number';
  if (schema instanceof z.ZodString) return 'a text in double quotes';
  if (schema instanceof z.ZodTuple) return `a list of ${schema.def.items.length} entries`;
  if (schema instanceof z.ZodArray) return 'a list';
  if (schema instanceof z.ZodEnum) return schema.options.map((option) => JSON.stringify(option)).join(' or ');
  if (schema instanceof z.ZodLiteral) return JSON.stringify(schema.value);
  if (schema instanceof z.ZodObject) {
    const keys = Object.entries(schema.shape).map(([key, value]) => (value instanceof z.ZodOptional ? `${key}?` : key));
    return keys.length > 8 ? 'an object' : `{ ${keys.join(', ')} }`;
  }
  if (schema instanceof z.ZodUnion) return schema.options.map(form).join(' or ');
  return 'an object';
}

/** The schema's own words about its value, such as its unit. */
function meaning(schema: unknown): string {
  return schema instanceof z.ZodType && schema.description !== undefined ? ` (${schema.description})` : '';
}

function knownKeys(schema: unknown): string[] {
  return schema instanceof z.ZodObject ? Object.keys(schema.shape).filter((key) => key !== '$schema') : [];
}
