import { mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeWhole } from '../src/write-whole.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'flathead-write-'));
});
afterEach(() => rm(folder, { recursive: true }));

describe('a file that is written', () => {
  it('is as it was when the disk fills up half-way, and nothing is left beside it', async () => {
    const file = join(folder, 'head.json');
    await writeFile(file, 'old');
    const full = async (path: string, content: string | Uint8Array) => {
      await writeFile(path, content.slice(0, 3));
      throw Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' });
    };
    await expect(writeWhole(file, 'new and longer', full)).rejects.toMatchObject({
      code: 'NO_FILE',
      message: expect.stringMatching(/head\.json cannot be written: its disk is full\. .*make room/),
    });
    expect(await readFile(file, 'utf8')).toBe('old');
    expect(await readdir(folder)).toEqual(['head.json']);
  });

  it('takes the place of the old one, also behind a link', async () => {
    const [file, link] = [join(folder, 'head.json'), join(folder, 'link.json')];
    await writeWhole(file, 'old');
    await symlink(file, link);
    await writeWhole(link, 'new');
    expect(await readFile(file, 'utf8')).toBe('new');
    expect((await readdir(folder)).sort()).toEqual(['head.json', 'link.json']);
  });

  it('is refused in a folder that is not there, and in place of a folder', async () => {
    for (const path of [join(folder, 'no', 'head.json'), folder])
      await expect(writeWhole(path, 'new')).rejects.toMatchObject({ code: 'NO_FILE' });
    expect(await readdir(folder)).toEqual([]);
  });
});
