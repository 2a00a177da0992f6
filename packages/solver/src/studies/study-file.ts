import { z } from 'zod';
import { Fault } from '../fault/fault.ts';
import type { HeadModel } from '../model/head-model.ts';
import { modelHash } from '../model/model-hash.ts';
import { checkHeadModel } from '../model/read.ts';
import { checkSchema } from '../plate/check-schema.ts';
import { readJson } from '../plate/read-json.ts';
import { VERSION } from '../version.ts';
import { studyOf } from './studies.ts';
import { type Part, type Study, type StudyRow, studyKinds } from './study.ts';

/*
 * A study as text: JSON Lines. First the header, which holds all it takes to make the study again; then the rows by index;
 * last, for a whole study that ran to its end, the summary.
 */

const header = z.strictObject({
  flatheadStudy: z.literal(1),
  study: z.enum(studyKinds),
  version: z.string().max(100),
  modelHash: z.string().max(100),
  total: z.number().int().min(0),
  part: z.strictObject({ part: z.number().int().min(1), of: z.number().int().min(1) }).optional(),
  plan: z.record(z.string(), z.unknown()),
  model: z.record(z.string(), z.unknown()),
});

const indexed = z.looseObject({ index: z.number().int().min(0) });

type StudyHeader = z.infer<typeof header>;

/** Most lines of a file that is read. */
const MOST_LINES = 2_000_000;

export function headerLine(study: Study, model: HeadModel, part?: Part): string {
  return line({
    flatheadStudy: 1,
    study: study.kind,
    version: VERSION,
    modelHash: modelHash(model),
    total: study.total,
    ...(part === undefined ? {} : { part }),
    plan: study.plan,
    model,
  });
}

export function rowLine(row: StudyRow): string {
  return line(row);
}

export function summaryLine(summary: object): string {
  return line({ summary });
}

/** A study read from its text. */
interface ReadStudy {
  readonly header: StudyHeader;
  readonly rows: readonly StudyRow[];
}

/**
 * Header and rows of a study's text; the summary, if there is one, follows from them.
 *
 * @param name of the file, for messages
 * @throws Fault with the number of the line that is wrong
 */
function readStudy(text: string, name: string): ReadStudy {
  const lines = text.split('\n');
  if (lines.at(-1)?.trim() === '') lines.pop();
  if (lines.length > MOST_LINES)
    throw new Fault('TOO_LARGE', `${name} has more than ${MOST_LINES} lines, the most that is read.`, '', {
      file: name,
    });
  const values = lines.map((content, i) => at(name, i, () => readJson(content)));
  const [first, ...rest] = values;
  const head = at(name, 0, () => checkSchema(header, first, 'header of a study'));
  const rows = rest.flatMap((value, i): StudyRow[] =>
    typeof value === 'object' && value !== null && 'summary' in value
      ? []
      : [at(name, i + 1, () => checkSchema(indexed, value, 'row of a study'))],
  );
  return { header: head, rows };
}

/**
 * The whole study that parts of it make: byte by byte what it had been without splitting it.
 *
 * @throws Fault when parts are of different studies, or rows are missing or there twice
 */
export function mergeStudies(parts: readonly { readonly name: string; readonly text: string }[]): string {
  const read = parts.map(({ name, text }) => ({ name, ...readStudy(text, name) }));
  const [first] = read;
  if (first === undefined) throw new Fault('USAGE', 'There is nothing to merge. Name the files of the parts.', '');
  for (const other of read) requireSame(first, other);
  const { study: kind, model: unchecked, plan, version, total } = first.header;
  if (version !== VERSION)
    throw new Fault(
      'SCHEMA',
      `${first.name} was made by version ${version}; this is version ${VERSION}, which may round otherwise. Merge with the version that made the parts.`,
      'version',
      { value: version, expected: VERSION },
    );
  const model = checkHeadModel(unchecked);
  const study = studyOf(kind, model, plan);
  if (modelHash(model) !== first.header.modelHash || study.total !== total)
    throw new Fault(
      'SCHEMA',
      `The header of ${first.name} was changed: it does not fit its own model and plan.`,
      'modelHash',
      {
        value: first.header.modelHash,
        expected: modelHash(model),
      },
    );
  const rows = everyRowOnce(read, study);
  return [headerLine(study, model), ...rows.map(rowLine), summaryLine(study.summary(rows))].join('');
}

function everyRowOnce(read: readonly (ReadStudy & { readonly name: string })[], study: Study): StudyRow[] {
  const rows: StudyRow[] = [];
  for (const { name, rows: some } of read)
    for (const unchecked of some) {
      const { index } = unchecked;
      if (index >= study.total || rows[index] !== undefined)
        throw new Fault(
          'SCHEMA',
          index >= study.total
            ? `${name} has a row ${index}, but the study ends at ${study.total - 1}. Check that the file is whole.`
            : `Row ${index} is there twice, the second time in ${name}. Name every part once.`,
          `rows.${index}`,
          { value: index, file: name },
        );
      at(name, null, () => checkSchema(study.row, unchecked, `row ${index}`));
      rows[index] = unchecked;
    }
  const missing = Array.from({ length: study.total }, (_, i) => i).filter((i) => rows[i] === undefined);
  if (missing.length > 0)
    throw new Fault(
      'SCHEMA',
      `${missing.length} of ${study.total} rows are missing, the first of them ${missing.slice(0, 5).join(', ')}. Add the parts that hold them, or run these again.`,
      'rows',
      { value: missing.length, expected: study.total },
    );
  return rows;
}

function requireSame(first: ReadStudy & { readonly name: string }, other: ReadStudy & { readonly name: string }): void {
  const { part: _one, ...mine } = first.header;
  const { part: _two, ...theirs } = other.header;
  const differs = Object.entries(mine).find(
    ([key, value]) =>
      JSON.stringify(value) !== JSON.stringify(Object.entries(theirs).find(([name]) => name === key)?.[1]),
  );
  if (differs === undefined) return;
  throw new Fault(
    'SCHEMA',
    `${other.name} is no part of the same study as ${first.name}: they differ in "${differs[0]}". Merge parts of one study only.`,
    differs[0],
    { file: other.name },
  );
}

/** What `make` gives; a fault of it says the file and the line, from 1. */
function at<T>(name: string, line: number | null, make: () => T): T {
  try {
    return make();
  } catch (thrown) {
    if (!(thrown instanceof Fault)) throw thrown;
    const where = line === null ? name : `${name}, line ${line + 1}`;
    throw new Fault(thrown.code, `${where}: ${thrown.message}`, thrown.path, thrown.details);
  }
}

function line(value: object): string {
  return `${JSON.stringify(value)}\n`;
}
