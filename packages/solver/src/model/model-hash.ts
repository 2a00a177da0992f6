import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { HeadModel } from './head-model.ts';

/** Hexadecimal digits kept: 48 bits, one chance in 10^8 that two of 2,000 models share a hash. */
const DIGITS = 12;

/**
 * Tells one head model from another, in reports, studies and file names: the same content gives the same hash whatever
 * the order of its keys or its layout as text. The pointer to the schema is not content.
 *
 * @returns 12 hexadecimal digits of SHA-256 (FIPS 180-4) over the model as JSON with sorted keys
 */
export function modelHash(model: HeadModel): string {
  const { $schema: _pointer, ...content } = { $schema: '', ...model };
  return bytesToHex(sha256(utf8ToBytes(JSON.stringify(sorted(content))))).slice(0, DIGITS);
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, held]) => held !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, held]) => [key, sorted(held)]),
  );
}
