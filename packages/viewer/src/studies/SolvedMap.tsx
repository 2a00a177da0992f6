import type { HeadModel } from '@flathead/solver';
import { useElementSize } from '@mantine/hooks';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { Legend } from '../charts/Legend.tsx';
import { PlanMap } from '../charts/PlanMap.tsx';
import { planScale } from '../charts/plan-field.ts';
import { answerOf } from '../state/answer-store.ts';
import { useWorkbench } from '../state/use-workbench.ts';
import styles from './studies.module.css';

/** Width of the map before its place is measured, and the most that it takes, px. */
const USUAL = 620;
const MOST = 980;

/** The head as placed, solved while the bench needs no solver. */
export function SolvedMap({ model }: { model: HeadModel }) {
  const { background, answers } = useWorkbench();
  const { ref, width } = useElementSize();
  const answer = useStore(answers, (state) => answerOf(state, model));
  useEffect(() => {
    background.want('study', [model]);
    return () => background.want('study', []);
  }, [background, model]);
  if (answer?.kind !== 'solved') return <p className={styles.waits}>The map follows as soon as the bench is quiet.</p>;
  const head = { model, result: answer.result, caseName: null };
  return (
    <figure ref={ref} className={styles.map} data-testid="placement-map">
      <PlanMap
        head={head}
        width={Math.min(MOST, width || USUAL)}
        label={`Map of ${model.name} as placed: bow against the limit, keep-outs hatched`}
      />
      <figcaption>
        <Legend scale={planScale(head, 'deviation')} caption="Bow, µm" unit="µm" factor={1000} />
      </figcaption>
    </figure>
  );
}
