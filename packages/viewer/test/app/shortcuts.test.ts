import { describe, expect, it } from 'vitest';
import { LOCAL_KEYS, SHORTCUTS } from '../../src/app/shortcuts.ts';

/** Keys with Ctrl or Cmd that browsers keep for tabs, windows, search, print, zoom and their tools: common practice, no source. */
const OF_THE_BROWSER = [
  't',
  'n',
  'w',
  'q',
  'l',
  'r',
  'p',
  'd',
  'f',
  'g',
  'h',
  'j',
  'k',
  'u',
  'e',
  'a',
  'c',
  'v',
  'x',
  '+',
  '-',
  '0',
]
  .map((key) => `mod+${key}`)
  .concat(['t', 'n', 'w', 'r', 'i', 'j', 'c', 'b', 'o', 'delete'].map((key) => `mod+shift+${key}`));

describe('keys of the page', () => {
  const keys = SHORTCUTS.flatMap((shortcut) => shortcut.keys);

  it('has each key once and each told', () => {
    expect(keys.length).toBeGreaterThan(10);
    expect(new Set(keys).size).toBe(keys.length);
    expect(SHORTCUTS.filter(({ what }) => what === '')).toEqual([]);
    expect(
      Object.values(LOCAL_KEYS)
        .flat()
        .filter(({ what }) => what === ''),
    ).toEqual([]);
  });

  it('takes no key of the browser', () => {
    expect(keys.filter((key) => OF_THE_BROWSER.includes(key))).toEqual([]);
  });

  it('takes neither function keys nor keys with Alt, which screen readers and menus use', () => {
    expect(keys.filter((key) => /alt|^f\d|insert|caps/.test(key))).toEqual([]);
  });
});
