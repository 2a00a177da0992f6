import { describe, expect, it } from 'vitest';
import { soft, stiff } from './heads.ts';
import { runHere } from './run-here.ts';

describe('flathead check --advise', () => {
  it('says what would help a head that fails, and how far', async () => {
    const input = JSON.stringify(soft);
    const asked = await runHere(['check', '-', '--advise'], { input });
    expect(asked.code).toBe(1);
    const said = /^ {2}Advice: -[\d.]+ um[^:]*: a body ([\d.]+) mm thicker \(([\d.]+) mm\)/m.exec(asked.out)!;
    const [by, thickness] = said.slice(1).map(Number);
    expect(thickness).toBe(soft.body.thickness + by);
    expect(asked.out).not.toContain('change more of the design');
    const hopeless = JSON.stringify({
      ...soft,
      sites: { ...soft.sites, probes: { ...soft.sites.probes, preload: 1 } },
    });
    expect((await runHere(['check', '-', '--advise'], { input: hopeless })).out).toMatch(
      /^ {2}Advice: None of these is enough, alone or together: change more of the design/m,
    );
    const { advice } = JSON.parse((await runHere(['check', '-', '--advise', '--json'], { input })).out);
    expect(advice).toContainEqual(expect.objectContaining({ kind: 'thickness', thickness }));
    expect((await runHere(['check', '-'], { input })).out).not.toContain('Advice');
  });

  it('has nothing to say of a head that passes', async () => {
    const { out } = await runHere(['check', '-', '--advise', '--json'], { input: JSON.stringify(stiff) });
    expect(JSON.parse(out).advice).toEqual([]);
  });
});
