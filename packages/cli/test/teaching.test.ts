import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readHeadModel } from '@flathead/solver';
import { describe, expect, it } from 'vitest';
import { HELP_EXAMPLES } from '../src/help-examples.ts';
import { runHere } from './run-here.ts';

async function commandNames(): Promise<string[]> {
  const { out } = await runHere(['--help']);
  const list = out.slice(out.indexOf('Commands:'), out.indexOf('Start here:'));
  return [...list.matchAll(/^ {2}([a-z]+) /gm)].map(([, name]) => name).filter((name) => name !== 'help');
}

describe('help', () => {
  it('ends with examples for every command', async () => {
    const names = await commandNames();
    expect(names.length).toBeGreaterThan(12);
    expect(Object.keys(HELP_EXAMPLES).toSorted()).toEqual(names.toSorted());
    for (const name of names) {
      const { out } = await runHere([name, '--help']);
      expect(out, name).toMatch(new RegExp(`Examples:\n  # .+\n  .*flathead ${name}`));
    }
  });

  it('shows only options and values that the command has', async () => {
    for (const [name, examples] of Object.entries(HELP_EXAMPLES)) {
      const { out } = await runHere([name, '--help']);
      const options = out.slice(0, out.indexOf('Examples:'));
      for (const [line] of examples) {
        const own = line.split('|').find((part) => part.includes(`flathead ${name}`)) ?? '';
        for (const [flag] of own.matchAll(/--[a-z-]+/g)) expect(options, line).toContain(`${flag} `);
      }
    }
  });
});

describe('flathead new', () => {
  it('drafts a head from a few answers that can be judged', async () => {
    const { code, out } = await runHere([
      'new',
      '--columns',
      '5',
      '--die',
      '4.6,5.2',
      '--skip',
      '1,1',
      '--frame',
      'none',
    ]);
    expect(code).toBe(0);
    const model = readHeadModel(out);
    expect([model.sites.columns, model.sites.rows, model.sites.die]).toEqual([5, 2, [4.6, 5.2]]);
    expect(model.frame).toBeUndefined();
    const checked = await runHere(['check', '-', '--json'], { input: out });
    expect(JSON.parse(checked.out).verdict.criteria[0].limit).toBe(0.03);
  });

  it('writes a file that is not there yet, and no other', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'flathead-new-')), 'head.json');
    expect((await runHere(['new', '--name', 'First', '--write', file])).code).toBe(0);
    const again = await runHere(['new', '--name', 'Second', '--write', file]);
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('is there already')]);
    expect(readHeadModel(readFileSync(file, 'utf8')).name).toBe('First');
  });

  it('says which answer is wrong', async () => {
    for (const [args, says] of [
      [['--columns', '0'], 'columns is 0; expected 1 or more'],
      [['--die', '5'], 'Give two numbers'],
      [['--probes', '9000'], 'Skip more dies'],
      [['--frame', 'cheese'], 'Allowed choices'],
    ] as const) {
      const { code, err, out } = await runHere(['new', ...args]);
      expect([code, out]).toEqual([2, '']);
      expect(err).toContain(says);
    }
  });
});

describe('--log json', () => {
  it('writes a record a line to stderr and leaves stdout as it is', async () => {
    const { out: head } = await runHere(['new']);
    const plain = await runHere(['check', '-'], { input: head });
    const logged = await runHere(['check', '-', '--log', 'json'], { input: head });
    expect(logged.out).toBe(plain.out);
    expect(plain.err).toBe('');
    const records = logged.err
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(records.length).toBeGreaterThan(3);
    expect(records.every(({ time }) => Number.isFinite(Date.parse(time)))).toBe(true);
    expect(records.map(({ step }) => step)).toContain('solve');
    expect(records.at(-1)).toMatchObject({ event: 'end', code: 0 });
  });

  it('counts the rows of a study, and holds refusals', async () => {
    const { out: head } = await runHere(['new']);
    const vary = ['--vary', 'body.thickness=4..6:3', '--workers', '1', '--no-crossings'];
    const { err } = await runHere(['sweep', '-', ...vary, '--log', 'json'], { input: head });
    const made = err
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).made);
    expect(made.filter((count) => count !== undefined)).toEqual([1, 2, 3]);
    const refused = await runHere(['check', '-', '--log', 'json'], { input: '{' });
    expect(JSON.parse(refused.err.split('\n')[0])).toMatchObject({ event: 'refused', code: 'NOT_JSON' });
  });
});

describe('flathead completion', () => {
  it('completes commands, options and values in bash', async () => {
    const { out: script } = await runHere(['completion', 'bash']);
    const complete = (...words: string[]): string[] =>
      execFileSync(
        'bash',
        [
          '-c',
          `${script}\nCOMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _flathead; printf '%s\\n' "\${COMPREPLY[@]}"`,
          '-',
          ...words,
        ],
        {
          encoding: 'utf8',
        },
      )
        .split('\n')
        .filter((word) => word !== '');
    expect(complete('flathead', 'ch')).toEqual(['check']);
    expect(complete('flathead', '').toSorted()).toEqual([...(await commandNames()), '--help', '--version'].toSorted());
    expect(complete('flathead', 'check', '--a')).toEqual(['--advise']);
    expect(complete('flathead', 'export', 'f')).toEqual(['fasteners', 'fields']);
    expect(complete('flathead', 'new', '--ribs', 'c')).toEqual(['columns']);
    // A head: left to the shell, which completes files.
    expect(complete('flathead', 'check', 'kes')).toEqual([]);
  });

  it('describes every command and value to zsh', async () => {
    const { out } = await runHere(['completion', 'zsh']);
    for (const name of await commandNames()) expect(out).toMatch(new RegExp(`^ {4}${name}\\) _arguments `, 'm'));
    expect(out).toContain("'*--ribs[between]:value:(none columns rows both)'");
  });
});
