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
  it('shows lines that the command prints, numbers to the last digit or 2 %', async () => {
    const [sample] = blocks(read('README.md'), 'text');
    const [prompt, ...lines] = sample.trimEnd().split('\n');
    const { out } = await flathead(prompt.replace(/^\$ npx flathead /, '').split(' '));
    const printed = out.split('\n');
    const shown = lines.filter((line) => line.trim() !== '' && line.trim() !== '...');
    expect(shown.length).toBeGreaterThan(3);
    for (const line of shown) expect(printed, line).toSatisfy((all: string[]) => all.some((one) => alike(one, line)));
  });
});

/** The same words, and numbers that differ by a digit in the last place or 2 % at most. */
function alike(a: string, b: string): boolean {
  const number = /-?\d+(\.\d+)?/g;
  const words = (line: string): string => line.replace(number, '#').replace(/\s+/g, ' ');
  const numbers = (line: string): string[] => line.match(number) ?? [];
  if (words(a) !== words(b)) return false;
  const others = numbers(b);
  return numbers(a).every((text, i) => {
    const digit = 10 ** -(text.split('.')[1]?.length ?? 0);
    return Math.abs(Number(text) - Number(others[i])) <= Math.max(1.01 * digit, 0.02 * Math.abs(Number(text)));
  });
}
