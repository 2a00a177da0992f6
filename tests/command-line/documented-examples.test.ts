import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { flathead, root } from './run.ts';

const read = (file: string): string => readFileSync(join(root, file), 'utf8');

/** The fenced blocks of a page with some words after the fence, such as `json head`. */
function blocks(page: string, words: string): string[] {
  return [...page.matchAll(new RegExp(`^\`\`\`${words}\\n(.*?)^\`\`\``, 'gms'))].map(([, body]) => body);
}

describe('docs/model-files.md', () => {
  const page = read('docs/model-files.md');

  it('shows a head that is judged and within its limits', async () => {
    const [head] = blocks(page, 'json head');
    const { code, out } = await flathead(['check', '-', '--json'], head);
    expect(code).toBe(0);
    const { criteria } = JSON.parse(out).verdict;
    expect(criteria.map((judged: { criterion: string }) => judged.criterion)).toEqual(['bow', 'flatness']);
  });

  it('shows a square that bends as Timoshenko and Woinowsky-Krieger say: w = 0.00406235 q a^4/D', async () => {
    const [plate] = blocks(page, 'json plate');
    const { code, out } = await flathead(['plate', '-', '--json'], plate);
    expect(code).toBe(0);
    const D = (200_000 * 1 ** 3) / (12 * (1 - 0.3 ** 2));
    const exact = (0.00406235 * 0.001 * 100 ** 4) / D;
    const [centre] = JSON.parse(out).w.at;
    expect(Math.abs(centre / exact - 1)).toBeLessThan(0.005);
    expect(page).toContain(`${exact.toFixed(4)} mm`);
  });
});

describe('README.md', () => {
  it('shows lines that the command prints', async () => {
    const [sample] = blocks(read('README.md'), 'text');
    const [prompt, ...lines] = sample.trimEnd().split('\n');
    const args = prompt.replace(/^\$ npx flathead /, '').split(' ');
    const { out } = await flathead(args);
    const printed = out.split('\n');
    const shown = lines.filter((line) => line.trim() !== '' && line.trim() !== '...');
    expect(shown.length).toBeGreaterThan(3);
    for (const line of shown) expect(printed).toContain(line);
  });
});
