import { type BudgetRow, type BudgetSummary, budgetStudy, Fault } from '@flathead/solver';
import type { Command } from 'commander';
import { um } from './format.ts';
import { EXIT } from './refusal.ts';
import { numberOf, readStudyInput, runStudy, type StudyOptions, several, studyCommand } from './study-run.ts';
import { table } from './table.ts';
import type { Paint, Terminal } from './terminal.ts';

interface Options extends StudyOptions {
  readonly limit?: string;
  readonly systematic?: string[];
  readonly independent?: string[];
}

/** Adds `flathead budget`. */
export function addBudget(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  studyCommand(program, 'budget', 'add the bow of a head to whatever else uses up its planarity')
    .option('--limit <mm>', 'planarity that all may use up together')
    .option('--systematic <name=mm>', 'the same way in every head: added linearly', several)
    .option('--independent <name=mm>', 'different from head to head: added by root-sum-square', several)
    .action(async (file: string, options: Options) => ended(await budget(file, options, terminal)));
}

async function budget(file: string, options: Options, terminal: Terminal): Promise<number> {
  const { limit, systematic = [], independent = [] } = options;
  const contributor = (adds: string) => (text: string) => {
    const [, name, value] = /^(.+)=(.+)$/.exec(text) ?? [];
    if (name === undefined || value === undefined)
      throw new Fault('USAGE', `"${text}" is no contributor. Write name=mm, such as tip length=0.02.`, '', {
        value: text,
      });
    return { name, value: numberOf(value, name), adds };
  };
  const fromOptions = (): object => ({
    limit: numberOf(limit ?? '', '--limit'),
    contributors: [
      { name: 'bow', from: 'bow' },
      ...systematic.map(contributor('systematic')),
      ...independent.map(contributor('independent')),
    ],
  });
  const described = limit !== undefined || systematic.length + independent.length > 0;
  const example = '--limit 0.1 --independent "tip length=0.02"';
  const { model, plan } = await readStudyInput(file, options, described, fromOptions, example, terminal);
  const report = {
    text: budgetText,
    code: ({ outcome }: BudgetSummary) => (outcome === 'fail' ? EXIT.fail : EXIT.pass),
  };
  return runStudy(budgetStudy(model, plan), model, options, report, terminal);
}

function budgetText(rows: readonly BudgetRow[], summary: BudgetSummary, paint: Paint): string {
  const { limit, systematic, independent, total, worstCase, left, leftWorstCase, outcome } = summary;
  const room = (value: number): string => (value < 0 ? `${um(-value)} um over` : `${um(value)} um left`);
  const mark = { pass: paint.green('PASS'), marginal: paint.yellow('MARGINAL'), fail: paint.red('FAIL') }[outcome];
  return [
    table(
      ['contributor', 'um', 'adds', 'may be, um', 'left, um', ''],
      rows.map(({ name, value, error, adds, most, left, from = '' }) => [
        name,
        `${um(value)}${error === null ? '' : ` +- ${um(error)}`}`,
        adds,
        most === null ? 'others are over' : um(most),
        left === null ? '' : um(left),
        from,
      ]),
      paint,
      [2, 5],
    ),
    '',
    `systematic, added linearly        ${um(systematic)} um`,
    `independent, by root-sum-square   ${um(independent)} um`,
    `${mark}  total ${um(total)} um against ${um(limit)} um: ${room(left)}`,
    `worst case, all added linearly    ${um(worstCase)} um: ${room(leftWorstCase)}`,
    '',
  ].join('\n');
}
