import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import baseline from '../../../../models/kestrel-baseline.json' with { type: 'json' };
import manifest from '../../package.json' with { type: 'json' };
import { modelHash } from '../../src/model/model-hash.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { VERSION } from '../../src/version.ts';

const kestrel = checkHeadModel(baseline);

test('the hash is SHA-256 of the sorted JSON, as another implementation computes it', () => {
  const { flathead, name } = kestrel;
  const small = { name, flathead } as typeof kestrel;
  const text = `{"flathead":1,"name":${JSON.stringify(name)}}`;
  expect(modelHash(small)).toBe(createHash('sha256').update(text).digest('hex').slice(0, 12));
});

test('order of keys, schema pointer and absent options do not change the hash; any number does', () => {
  const reversed = Object.fromEntries(Object.entries(kestrel).reverse()) as typeof kestrel;
  expect(modelHash(reversed)).toBe(modelHash(kestrel));
  expect(modelHash({ ...kestrel, $schema: 'elsewhere.json' } as typeof kestrel)).toBe(modelHash(kestrel));
  expect(modelHash({ ...kestrel, note: undefined })).not.toBe(modelHash(kestrel));
  expect(modelHash({ ...kestrel, materials: undefined })).toBe(modelHash(kestrel));
  expect(modelHash({ ...kestrel, body: { ...kestrel.body, thickness: 4.6 } })).not.toBe(modelHash(kestrel));
});

test('the version is that of the package', () => {
  expect(VERSION).toBe(manifest.version);
});
