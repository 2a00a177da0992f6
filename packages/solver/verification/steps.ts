import { Fault } from '../src/fault/fault.ts';
import { didYouMean } from '../src/plate/near-names.ts';
import { verificationBook } from './book.ts';
import type { Basis, VerificationModel } from './check.ts';
import { measured } from './measured.ts';
import { observedOrder } from './observed-order.ts';

/** Which part of the book to run. */
export interface VerificationPlan {
  /** Name of a topic; all of them if left out. */
  readonly topic?: string;
  /** Name of a model; all of them if left out. */
  readonly model?: string;
  /** Models whose number is `index` modulo `of`, so that several workers can share the book. */
  readonly part?: { readonly index: number; readonly of: number };
}

/** One case of the book: what a source says. */
export interface VerificationCase {
  /** From 0, in the order of the book. */
  readonly index: number;
  readonly topic: string;
  readonly model: string;
  readonly quantity: string;
  readonly unit: string;
  readonly expected: number;
  /** Relative to `expected`; where that is zero, in `unit`. */
  readonly tolerance: number;
  readonly why: string;
  readonly source: string;
  readonly basis: Basis;
}

/** The same with what the solver says. Plain JSON. */
export interface VerificationRow extends VerificationCase {
  /** In `unit`, from the coarsest mesh to the finest; one value where there is no mesh. */
  readonly values: readonly number[];
  /** Nodes of those meshes; empty where there is none. */
  readonly nodes: readonly number[];
  /** Observed order of convergence; `null` where the three values tell none. */
  readonly order: number | null;
  /** Of the last value, relative to `expected`; where that is zero, in `unit`. */
  readonly deviation: number;
  readonly within: boolean;
}

export interface VerificationSummary {
  readonly cases: number;
  readonly within: number;
  readonly models: number;
}

interface Planned {
  readonly model: VerificationModel;
  readonly cases: readonly VerificationCase[];
}

/** Names of all topics in order. */
export const verificationTopics: readonly string[] = verificationBook.map(({ name }) => name);

/** All cases of the book in order, or those of a plan: what {@link verificationSteps} will yield a row for. */
export function verificationCases(plan: VerificationPlan = {}): readonly VerificationCase[] {
  return planned(plan).flatMap(({ cases }) => cases);
}

/**
 * Solves the book model by model and yields a row for each case. A model with several cases is solved once.
 *
 * @throws Fault USAGE for a topic that the book does not have
 */
export function* verificationSteps(plan: VerificationPlan = {}): Generator<VerificationRow, VerificationSummary, void> {
  const models = planned(plan);
  let [cases, within] = [0, 0];
  for (const { model, cases: asked } of models) {
    const { values, nodes } = measured(model);
    for (const [i, each] of asked.entries()) {
      const row = judged(each, values[i], nodes);
      cases++;
      if (row.within) within++;
      yield row;
    }
  }
  return { cases, within, models: models.length };
}

function judged(each: VerificationCase, values: readonly number[], nodes: readonly number[]): VerificationRow {
  const { expected, tolerance } = each;
  const last = values[values.length - 1];
  const deviation = (last - expected) / (expected === 0 ? 1 : Math.abs(expected));
  // Written so that NaN is not within.
  const within = Math.abs(deviation) <= tolerance;
  return { ...each, values, nodes, order: observedOrder(values), deviation, within };
}

function planned({ topic, model: only, part }: VerificationPlan): readonly Planned[] {
  if (topic !== undefined && !verificationTopics.includes(topic))
    throw new Fault(
      'USAGE',
      `The verification book has no topic "${topic}".${didYouMean(topic, verificationTopics)} Its topics are ${verificationTopics.join(', ')}.`,
      '',
      { value: topic, expected: verificationTopics },
    );
  let index = 0;
  const all = verificationBook.flatMap(({ name, models }) =>
    models.map((model) => ({
      model,
      topic: name,
      cases: model.checks.map(
        ({ quantity, unit, expected, tolerance, why, source, basis }): VerificationCase => ({
          index: index++,
          topic: name,
          model: model.name,
          quantity,
          unit,
          expected,
          tolerance,
          why,
          source,
          basis,
        }),
      ),
    })),
  );
  return all.filter(
    (each, i) =>
      (topic === undefined || each.topic === topic) &&
      (only === undefined || each.model.name === only) &&
      (part === undefined || i % part.of === part.index),
  );
}
