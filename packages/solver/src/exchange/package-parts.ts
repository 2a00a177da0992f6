import { parseXml, type XmlElement } from '@rgrove/parse-xml';
import { strFromU8, unzipSync } from 'fflate';
import { Fault } from '../fault/fault.ts';
import { LONGEST_TEXT } from '../plate/read-json.ts';
import type { FileContent } from './file-text.ts';

/** An XML part of a package by its path; `null` where there is none. @throws Fault UNREADABLE */
export type PackageParts = (path: string) => XmlElement | null;

/** Whether a file is packed as workbooks are. */
export function isPacked(content: FileContent): content is Uint8Array {
  return typeof content !== 'string' && [0x50, 0x4b, 0x03, 0x04].every((byte, i) => content[i] === byte);
}

/**
 * Parts of a package of the Open Packaging Conventions (ECMA-376, part 2), each read when it is asked for.
 *
 * @param isWanted by path: what is unpacked at all
 * @throws Fault UNREADABLE or TOO_LARGE
 */
export function partsOf(bytes: Uint8Array, what: string, isWanted: (path: string) => boolean): PackageParts {
  const parts = unpacked(bytes, what, isWanted);
  return (path) => {
    const held = parts[path];
    if (held === undefined) return null;
    try {
      return parseXml(strFromU8(held)).root;
    } catch {
      throw new Fault('UNREADABLE', `The part ${path} of the ${what} is no sound XML. Save the workbook again.`);
    }
  };
}

function unpacked(
  bytes: Uint8Array,
  what: string,
  isWanted: (path: string) => boolean,
): Readonly<Record<string, Uint8Array>> {
  let size = 0;
  try {
    return unzipSync(bytes, {
      filter({ name, originalSize }) {
        if (!isWanted(name)) return false;
        size += originalSize;
        if (size > LONGEST_TEXT)
          throw new Fault(
            'TOO_LARGE',
            `The ${what} unpacks to more than ${LONGEST_TEXT / 1e6} MB. Save its sheet as CSV, and split it.`,
          );
        return true;
      },
    });
  } catch (thrown) {
    if (thrown instanceof Fault) throw thrown;
    throw new Fault('UNREADABLE', `The ${what} is a damaged workbook: it can't be unpacked. Save it again, or as CSV.`);
  }
}
