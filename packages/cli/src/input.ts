import { open } from 'node:fs/promises';
import { Fault, LONGEST_TEXT } from '@flathead/solver';
import type { Terminal } from './terminal.ts';

/** Text of a file in UTF-8, or of stdin for `-`. @throws Fault NO_FILE or TOO_LARGE */
export async function readInput(path: string, terminal: Terminal): Promise<string> {
  return (await readBytes(path, terminal)).toString('utf8');
}

/**
 * Bytes of a file, or of stdin for `-`. Stops reading where they get more than any model has.
 *
 * @throws Fault NO_FILE or TOO_LARGE
 */
export async function readBytes(path: string, { input }: Terminal): Promise<Buffer> {
  if (path === '-') return collect(input, 'stdin');
  try {
    const file = await open(path);
    try {
      return await collect(file.createReadStream({ autoClose: false }), path);
    } finally {
      await file.close();
    }
  } catch (thrown) {
    if (thrown instanceof Fault) throw thrown;
    throw new Fault('NO_FILE', `${path} can't be read: ${reason(thrown)}. Check the path.`, '', { file: path });
  }
}

async function collect(chunks: AsyncIterable<Uint8Array>, name: string): Promise<Buffer> {
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of chunks) {
    size += chunk.length;
    if (size > LONGEST_TEXT)
      throw new Fault(
        'TOO_LARGE',
        `${name} is longer than ${LONGEST_TEXT / 1e6} MB, the most that is read. Leave out what the model does not need, or draw outlines with fewer corners.`,
        '',
        { file: name, expected: `at most ${LONGEST_TEXT} bytes` },
      );
    parts.push(chunk);
  }
  return Buffer.concat(parts);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is no folder',
  EACCES: 'permission is denied',
  ENOSPC: 'its disk is full',
  EROFS: 'its disk is read-only',
};

/** Why a file cannot be read or written, in words. */
export function reason(thrown: unknown): string {
  const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
  return REASONS[code] ?? (thrown instanceof Error ? thrown.message : String(thrown));
}
