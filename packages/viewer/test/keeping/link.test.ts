import { Fault } from '@flathead/solver';
import { deflateSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { headLink, holdsHead, LONGEST_LINK, readHeadLink } from '../../src/keeping/link.ts';
import { sampleHead } from '../state/sample-head.ts';

const PAGE = 'https://example.org/flathead/';
const hashOf = (link: string) => link.slice(link.indexOf('#'));
/** RFC 4648, section 5, from the base64 of the platform. */
const base64Url = (bytes: Uint8Array) =>
  btoa(String.fromCharCode(...bytes)).replace(/[+/=]/g, (sign) => ({ '+': '-', '/': '_' })[sign] ?? '');
const packed = (text: string) => `#head=${base64Url(deflateSync(strToU8(text)))}`;

function codeOf(read: () => unknown): string {
  try {
    read();
  } catch (thrown) {
    if (thrown instanceof Fault) return thrown.code;
    throw thrown;
  }
  return 'none';
}

describe('a link that holds a head', () => {
  it('gives the head back, without signs that an address escapes', () => {
    const model = { ...sampleHead, name: 'Kestrel µ – "quoted" & more', note: 'ÄÖÜ 试' };
    const link = headLink(model, PAGE);
    expect(link).toMatch(/^https:\/\/example\.org\/flathead\/#head=[\w-]+$/);
    expect(new URL(link).href).toBe(link);
    expect(readHeadLink(hashOf(link))).toEqual(model);
    expect(readHeadLink(packed(JSON.stringify(model)))).toEqual(model);
    expect([holdsHead(hashOf(link)), holdsHead('#report')]).toEqual([true, false]);
  });

  it('is not made for a head that needs a longer one than is passed on', () => {
    const polygon = Array.from({ length: 4000 }, (_, i): [number, number] => [
      30 * Math.cos((i / 2000) * Math.PI),
      30 * Math.sin((i / 2000) * Math.PI),
    ]);
    const model = { ...sampleHead, body: { ...sampleHead.body, outline: { polygon } } };
    expect(codeOf(() => headLink(model, PAGE))).toBe('TOO_LARGE');
  });

  it('is refused when it is damaged, cut, too long, a bomb, or no head', () => {
    const good = hashOf(headLink(sampleHead, PAGE));
    expect(codeOf(() => readHeadLink('#head='))).toBe('USAGE');
    expect(codeOf(() => readHeadLink('#head=<script>'))).toBe('USAGE');
    expect(codeOf(() => readHeadLink('#head=AAAA'))).toMatch(/USAGE|NOT_JSON/);
    for (let cut = 7; cut < good.length; cut += 37)
      expect(codeOf(() => readHeadLink(good.slice(0, cut)))).not.toBe('none');
    expect(codeOf(() => readHeadLink(`#head=${'A'.repeat(LONGEST_LINK)}`))).toBe('TOO_LARGE');
    const bomb = packed(' '.repeat(10_000_000));
    expect(bomb.length).toBeLessThan(LONGEST_LINK);
    expect(codeOf(() => readHeadLink(bomb))).toBe('TOO_LARGE');
    expect(codeOf(() => readHeadLink(packed('{"flathead":1}')))).toBe('SCHEMA');
    expect(codeOf(() => readHeadLink(packed('{"__proto__":{"flathead":1}}')))).toBe('SCHEMA');
    expect(codeOf(() => readHeadLink(packed('nonsense')))).toBe('NOT_JSON');
  });
});
