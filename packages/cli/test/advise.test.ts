import { describe, expect, it } from 'vitest';
import { soft, stiff } from './heads.ts';
import { runHere } from './run-here.ts';

describe('flathead check --advise', () => {
  it('says what would help a head that fails, and how far', async () => {
    const input = JSON.stringify(soft);
    const asked = await runHere(['check', '-', '--advise'], { input });
    expect(asked.code).toBe(1);
    expect(asked.out).toMatch(/^ {2}Advice: A body 0\.5 mm thicker, [\d.]+ mm, gains [\d.]+ um/m);
    const thickness = Number(/mm thicker, ([\d.]+) mm/.exec(asked.out)![1]);
    expect(thickness).toBe(soft.body.thickness + 0.5);
    const { advice } = JSON.parse((await runHere(['check', '-', '--advise', '--json'], { input })).out);
    expect(advice).toContainEqual(expect.objectContaining({ kind: 'thickness', thickness }));
    expect((await runHere(['check', '-'], { input })).out).not.toContain('Advice');
  });

  it('has nothing to say of a head that passes', async () => {
    const { out } = await runHere(['check', '-', '--advise', '--json'], { input: JSON.stringify(stiff) });
    expect(JSON.parse(out).advice).toEqual([]);
  });
});
