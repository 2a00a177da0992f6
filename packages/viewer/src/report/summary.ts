import type { CriterionVerdict, HeadModel, HeadResult, Outcome } from '@flathead/solver';
import { CRITERION_NAMES } from '../format/criterion-text.ts';
import { forceDigits, micrometreDigits, typeset } from '../format/number.ts';

const HOLDS: Readonly<Record<Exclude<Outcome, 'fail'>, string>> = {
  pass: 'stays within every limit it is judged by',
  marginal: 'is at the edge of a limit: too near to it to call it a pass',
};

/** The report in a few plain sentences. */
export function summarySentences(model: HeadModel, { verdict, cases, sites }: HeadResult): string[] {
  const { outcome, criteria, sentence } = verdict;
  const bow = criteria.find(({ criterion }) => criterion === 'bow');
  const largest = cases.reduce((a, b) => (Math.abs(b.load) > Math.abs(a.load) ? b : a));
  return [
    `This head ${outcome === 'fail' ? breach(criteria) : HOLDS[outcome]}.`,
    typeset(sentence),
    `It carries ${count(sites.length, 'site')} of ${model.sites.probes.count} probes; at most ${forceDigits(largest.load)} N press on it, in case \u201c${largest.name}\u201d, held by ${count(model.fasteners.length, 'fastener')}.`,
    ...(bow === undefined ? [] : [trust(bow)]),
  ];
}

/** Which limits a head breaks: `exceeds its limits on bow and flatness`. */
function breach(criteria: readonly CriterionVerdict[]): string {
  const failed = criteria.filter((criterion) => criterion.outcome === 'fail');
  const verb = failed.every(({ bound }) => bound === 'most') ? 'exceeds' : 'is outside';
  return `${verb} its limit${failed.length === 1 ? '' : 's'} on ${list(failed.map(nameOf))}`;
}

function trust({ value, error, shearAdds }: CriterionVerdict): string {
  const bow = `the bow of ${micrometreDigits(value)} µm`;
  const spread = error === null ? 'is not estimated' : `is about ±${micrometreDigits(error)} µm`;
  const shear = shearAdds === null ? '' : `; transverse shear makes ${micrometreDigits(shearAdds)} µm of it`;
  return `The numerical error of ${bow} ${spread}${shear}.`;
}

function nameOf({ criterion }: CriterionVerdict): string {
  return CRITERION_NAMES[criterion].toLowerCase();
}

function list(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function count(amount: number, noun: string): string {
  return `${amount} ${noun}${amount === 1 ? '' : 's'}`;
}
