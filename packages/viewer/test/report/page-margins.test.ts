import { describe, expect, it } from 'vitest';
import { pageMargins } from '../../src/report/page-margins.ts';

describe('running header and footer', () => {
  it('keeps any name inside its string, so that it can end neither the style nor its element', () => {
    const css = pageMargins({
      name: '"; } </style><img src=x> \\ é',
      project: '',
      hash: '0123456789ab',
      version: '1.2.3',
      date: '2026-01-02',
    });
    expect(css).not.toMatch(/[<>&]/);
    const [, name] = /@top-left \{ content: "([^"]*)"/.exec(css)!;
    expect(name).toMatch(/^([a-z0-9]|\\[0-9a-f]+ )*$/i);
    // As a style sheet reads it back.
    expect(name.replace(/\\([0-9a-f]+) /g, (_, code) => String.fromCodePoint(Number.parseInt(code, 16)))).toBe(
      '"; } </style><img src=x> \\ é',
    );
    expect(css).toContain('counter(page) " of " counter(pages)');
  });

  it('shortens a name that the header has no room for', () => {
    const css = pageMargins({ name: 'n'.repeat(200), project: '', hash: '', version: '', date: '' });
    expect(css).toContain(`"${'n'.repeat(59)}\\2026 "`);
  });
});
