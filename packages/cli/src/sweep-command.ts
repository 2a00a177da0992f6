import { readAxis, readDesign, type SweepPlan, sweepStudy } from '@flathead/solver';
import type { Command } from 'commander';
import { readInput } from './input.ts';
import { EXIT } from './refusal.ts';
import { readStudyInput, runStudy, type StudyOptions, several, studyCommand } from './study-run.ts';
import { sweepText } from './sweep-report.ts';
import type { Terminal } from './terminal.ts';

interface Options extends StudyOptions {
  readonly vary?: string[];
  readonly design?: string;
  readonly errors?: boolean;
  readonly crossings: boolean;
}

/** Adds `flathead sweep`. */
export function addSweep(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  studyCommand(program, 'sweep', 'vary one or two parameters of a head, or a table of them')
    .option(
      '--vary <path=values>',
      'such as body.thickness=3..6:7 or body.material=peek,alumina-96; twice for a map',
      several,
    )
    .option('--design <file>', 'CSV table: paths on top, a variant in each further row')
    .option('--errors', 'estimate the numerical error of every variant')
    .option('--no-crossings', 'do not solve for the values that just pass')
    .action(async (file: string, options: Options) => ended(await sweep(file, options, terminal)));
}

async function sweep(file: string, options: Options, terminal: Terminal): Promise<number> {
  const { vary, design, errors = false, crossings } = options;
  const fromOptions = async (): Promise<SweepPlan> => {
    const common = errors ? { errors } : {};
    if (design !== undefined) return { ...readDesign(await readInput(design, terminal)), ...common };
    return { vary: (vary ?? []).map(readAxis), ...common, ...(crossings ? {} : { crossings }) };
  };
  const described = vary !== undefined || design !== undefined;
  const example = '--vary body.thickness=3..6:7';
  const { model, plan } = await readStudyInput(file, options, described, fromOptions, example, terminal);
  const study = sweepStudy(model, plan);
  return runStudy(
    study,
    model,
    options,
    { text: (rows, summary, paint) => sweepText(study.plan, rows, summary, paint), code: () => EXIT.pass },
    terminal,
  );
}
