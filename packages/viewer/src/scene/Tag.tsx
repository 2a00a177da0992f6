import { type ReactNode, useLayoutEffect, useRef } from 'react';
import styles from './labels.module.css';
import { useStageFrame } from './stage-frame.ts';

/** Sizes are told in steps, so that a digit more or less moves nothing, px. */
const STEP = 4;

interface TagProps {
  /** Key of the label that it is of, and a child of. */
  readonly of: string;
  /** Where there is little room, those with more stay. */
  readonly weight: number;
  /** Shown whatever it covers. */
  readonly kept?: boolean;
  readonly stale?: boolean;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** The text of a thing on the stage; it goes where it covers nothing, with a line to its thing where that is far. */
export function Tag({ of, weight, kept = false, stale = false, className = styles.tag, children }: TagProps) {
  const stage = useStageFrame();
  const text = useRef<HTMLSpanElement>(null);
  const line = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const [element, leader] = [text.current, line.current];
    if (element === null || leader === null) return;
    const size = { width: 0, height: 0 };
    stage.tags.set(of, { element, leader, weight: 0, kept: false, size, place: -1 });
    const watch = new ResizeObserver(([{ borderBoxSize }]) => {
      const [width, height] = [borderBoxSize[0].inlineSize, borderBoxSize[0].blockSize].map(inSteps);
      if (size.width === width && size.height === height) return;
      Object.assign(size, { width, height });
      stage.redraw();
    });
    watch.observe(element);
    return () => {
      watch.disconnect();
      stage.tags.delete(of);
    };
  }, [stage, of]);
  useLayoutEffect(() => {
    const tag = stage.tags.get(of);
    if (tag) Object.assign(tag, { weight, kept });
    stage.redraw();
  }, [stage, of, weight, kept]);
  return (
    <>
      <i ref={line} className={styles.leader} aria-hidden="true" hidden />
      <span ref={text} className={className} data-stale={stale || undefined}>
        {children}
      </span>
    </>
  );
}

function inSteps(px: number): number {
  return Math.ceil(px / STEP) * STEP;
}
