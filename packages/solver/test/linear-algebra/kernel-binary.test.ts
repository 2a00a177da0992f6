import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';

it('ships as compiled from its source', () => {
  const target = join(mkdtempSync(join(tmpdir(), 'kernel-')), 'kernel-binary.ts');
  const root = new URL('../../', import.meta.url);
  execFileSync(process.execPath, [new URL('kernel/build.mjs', root).pathname, target]);
  expect(readFileSync(target, 'utf8')).toBe(readFileSync(new URL('src/linear-algebra/kernel-binary.ts', root), 'utf8'));
}, 180_000);
