import { realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { Fault } from '@flathead/solver';
import { reason } from './input.ts';

/**
 * Writes a file as a whole: what was there stays until all of the new is on the disk, and stays for good when that fails.
 *
 * @param write stands in for the disk
 * @throws Fault NO_FILE with what keeps it from being written
 */
export async function writeWhole(
  file: string,
  content: string | Uint8Array,
  write: (file: string, content: string | Uint8Array) => Promise<void> = writeFile,
): Promise<void> {
  try {
    const known = await stat(file).catch(() => null);
    if (known !== null && !known.isFile()) {
      // A device or a pipe takes what comes.
      await write(file, content);
      return;
    }
    const target = known === null ? file : await realpath(file);
    const part = `${target}.${process.pid}.part`;
    try {
      await write(part, content);
      await rename(part, target);
    } catch (thrown) {
      await rm(part, { force: true });
      throw thrown;
    }
  } catch (thrown) {
    throw new Fault(
      'NO_FILE',
      `${file} cannot be written: ${reason(thrown)}. What was there is unchanged; make room, or name another file.`,
      '',
      { file },
    );
  }
}
