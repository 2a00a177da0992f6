import { readFileSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type VerificationRow, verificationCases, verificationSteps } from '@flathead/solver/verification';
import pc from 'picocolors';
import { describe, expect, it } from 'vitest';
import { caseName, verificationChapter } from '../src/verification-chapter.ts';
import { digits, verificationText } from '../src/verification-report.ts';
import { runHere } from './run-here.ts';

const topic = 'ceramic strength';

describe('flathead verify', () => {
  it('prints a table of a topic and ends with 0 when all of it is within tolerance', async () => {
    const { code, out, err } = await runHere(['verify', '--only', topic]);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toContain('effective area, m = 10');
    expect(out).toMatch(/7 of 7 cases within their tolerance\n$/);
  });

  it('prints rows of plain JSON', async () => {
    const { code, out } = await runHere(['verify', '--only', topic, '--json']);
    expect(code).toBe(0);
    const { cases, within, rows } = JSON.parse(out);
    expect([cases, within, rows.length]).toEqual([7, 7, 7]);
    expect(rows[0]).toMatchObject({ topic, basis: 'published', within: true, expected: 105 });
  });

  it('shows how far it is on a screen', async () => {
    const { err } = await runHere(['verify', '--only', topic], { screen: true });
    expect(err).toContain(`3 of 7: ${topic}`);
  });

  it('refuses a topic that the book does not have, with those it has', async () => {
    const { code, out } = await runHere(['verify', '--only', 'ceramics strength', '--json']);
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ code: 'USAGE', message: expect.stringContaining('Did you mean') });
  });

  it('writes a chapter', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'flathead-verify-'));
    try {
      const file = join(folder, 'chapter.md');
      const { code } = await runHere(['verify', '--only', topic, '--write', file]);
      expect(code).toBe(0);
      expect(await readFile(file, 'utf8')).toContain('## Ceramic strength');
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});

describe('a case outside of its tolerance', () => {
  const rows = [...verificationSteps({ topic })].map(
    (row, i): VerificationRow => (i === 2 ? { ...row, deviation: 0.3, within: false } : row),
  );

  it('is marked and counted in the table and in the chapter', () => {
    const text = verificationText(rows, pc.createColors(false));
    expect(text).toContain('! standard bar, configuration B: effective area, m = 20');
    expect(text).toContain('6 of 7 cases within their tolerance; outside are marked !');
    expect(verificationChapter(rows)).toContain('**outside**');
  });
});

describe('docs/verification.md', () => {
  const chapter = readFileSync(new URL('../../../docs/verification.md', import.meta.url), 'utf8');

  it('lists the cases of the book as they are; otherwise run flathead verify --write docs/verification.md', () => {
    const listed = chapter.split('\n').filter((line) => /^\| (?!case \|)/.test(line));
    const cases = verificationCases();
    expect(listed.length).toBe(cases.length);
    for (const [i, each] of cases.entries())
      expect(listed[i].startsWith(`| ${caseName(each)} | ${each.unit} | ${digits(each.expected)} |`), listed[i]).toBe(
        true,
      );
  });

  it('has all of them within their tolerance', () => {
    expect(chapter).toContain(`${verificationCases().length} of ${verificationCases().length} cases`);
    expect(chapter).not.toContain('**outside**');
  });
});
