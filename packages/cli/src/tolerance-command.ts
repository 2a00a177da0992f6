import { Fault, readDistribution, toleranceStudy } from '@flathead/solver';
import { type Command, Option } from 'commander';
import { EXIT } from './refusal.ts';
import { numberOf, readStudyInput, runStudy, type StudyOptions, several, studyCommand } from './study-run.ts';
import type { Terminal } from './terminal.ts';
import { toleranceText } from './tolerance-report.ts';

interface Options extends StudyOptions {
  readonly vary?: string[];
  readonly samples?: string;
  readonly seed?: string;
  readonly sampling?: string;
  readonly indices?: boolean;
  readonly confidence?: string;
}

/** Adds `flathead tolerance`. */
export function addTolerance(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  studyCommand(program, 'tolerance', 'let parameters of a head scatter, and see how its bow does')
    .option(
      '--vary <path=distribution>',
      'such as "body.thickness=tolerance(4.5, 0.05, 3)"; once for each parameter',
      several,
    )
    .option('--samples <n>', 'heads; 256 if left out')
    .option('--seed <n>', 'of the random numbers; 1 if left out')
    .addOption(new Option('--sampling <kind>', 'sobol if left out').choices(['sobol', 'random']))
    .option('--indices', 'Sobol indices: what matters most')
    .option('--confidence <share>', 'of the intervals; 0.95 if left out')
    .action(async (file: string, options: Options) => ended(await tolerance(file, options, terminal)));
}

async function tolerance(file: string, options: Options, terminal: Terminal): Promise<number> {
  const { vary, samples = '256', seed = '1', sampling, indices, confidence } = options;
  const fromOptions = (): object => ({
    vary: (vary ?? []).map(readScatter),
    samples: numberOf(samples, '--samples'),
    seed: numberOf(seed, '--seed'),
    ...(sampling === undefined ? {} : { sampling }),
    ...(indices === undefined ? {} : { indices }),
    ...(confidence === undefined ? {} : { confidence: numberOf(confidence, '--confidence') }),
  });
  const example = '--vary "body.thickness=tolerance(4.5, 0.05, 3)"';
  const { model, plan } = await readStudyInput(file, options, vary !== undefined, fromOptions, example, terminal);
  return runStudy(
    toleranceStudy(model, plan),
    model,
    options,
    { text: toleranceText, code: () => EXIT.pass },
    terminal,
  );
}

function readScatter(text: string): object {
  const [, path, distribution] = /^([^=]+)=(.+)$/.exec(text) ?? [];
  if (path === undefined || distribution === undefined)
    throw new Fault('USAGE', `"${text}" does not say what scatters. Write path=distribution.`, '', {
      value: text,
      expected: 'path=distribution',
    });
  return { path: path.split('+').map((one) => one.trim()), distribution: readDistribution(distribution) };
}
