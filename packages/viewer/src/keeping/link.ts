import { Fault, type HeadModel, readHeadModel } from '@flathead/solver';
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';

/** Longest address that is made or read, characters: mail and chat cut longer ones (common practice, no source). */
export const LONGEST_LINK = 16_000;
/** Most that the model in a link may unfold to, bytes; a short link can unfold to a thousand times its length. */
const LARGEST_TEXT = 2_000_000;
const PIECE = 1024;
const MARK = '#head=';

/**
 * Address that holds a head: its JSON deflated (RFC 1951), then in base64url (RFC 4648, section 5).
 *
 * @param page address of the page, without a hash
 * @throws Fault TOO_LARGE for a head that needs more than {@link LONGEST_LINK}
 */
export function headLink(model: HeadModel, page: string): string {
  const { $schema: _pointer, ...content } = { $schema: '', ...model };
  const packed = deflateSync(strToU8(JSON.stringify(content)), { level: 9 });
  const link = `${page}${MARK}${toBase64Url(packed)}`;
  if (link.length > LONGEST_LINK)
    throw new Fault(
      'TOO_LARGE',
      `The link would have ${link.length} characters; at most ${LONGEST_LINK} are passed on whole. Save the model file and send that instead, or draw its outlines with fewer corners.`,
      '',
      { value: link.length, expected: `at most ${LONGEST_LINK} characters` },
    );
  return link;
}

export function holdsHead(hash: string): boolean {
  return hash.startsWith(MARK);
}

/**
 * The head in the hash of an address. The link may come from anyone: nothing of it is believed before it is checked.
 *
 * @throws Fault TOO_LARGE, USAGE for what is no link of this page, else what is wrong with the head
 */
export function readHeadLink(hash: string): HeadModel {
  if (hash.length > LONGEST_LINK)
    throw new Fault(
      'TOO_LARGE',
      `The link has ${hash.length} characters; at most ${LONGEST_LINK} are read. Ask for the model file instead.`,
      '',
      { value: hash.length, expected: `at most ${LONGEST_LINK} characters` },
    );
  const code = hash.slice(MARK.length);
  if (!/^[\w-]+$/.test(code)) throw broken('it holds signs that no link has');
  return readHeadModel(strFromU8(unfolded(fromBase64Url(code))));
}

function unfolded(packed: Uint8Array): Uint8Array {
  const pieces: Uint8Array[] = [];
  let total = 0;
  const inflate = new Inflate((piece) => {
    pieces.push(piece);
    total += piece.length;
    if (total > LARGEST_TEXT)
      throw new Fault(
        'TOO_LARGE',
        `The head in the link unfolds to more than ${LARGEST_TEXT / 1e6} MB, which no head needs. Do not trust the link; ask for the model file.`,
        '',
        { expected: `at most ${LARGEST_TEXT} bytes` },
      );
  });
  try {
    for (let from = 0; from < packed.length; from += PIECE)
      inflate.push(packed.subarray(from, from + PIECE), from + PIECE >= packed.length);
  } catch (thrown) {
    if (thrown instanceof Fault) throw thrown;
    throw broken(thrown instanceof Error ? thrown.message : String(thrown));
  }
  const whole = new Uint8Array(total);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

function broken(reason: string): Fault {
  return new Fault(
    'USAGE',
    `The link is damaged or cut (${reason}). Copy all of it again, or ask for the model file.`,
    '',
    { reason },
  );
}

function toBase64Url(bytes: Uint8Array): string {
  const binary = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromBase64Url(code: string): Uint8Array {
  try {
    return Uint8Array.from(atob(code.replaceAll('-', '+').replaceAll('_', '/')), (sign) => sign.charCodeAt(0));
  } catch {
    throw broken('its end is missing');
  }
}
