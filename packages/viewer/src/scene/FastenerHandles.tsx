import { useModel, useView } from '../state/use-workbench.ts';
import { FastenerHandle } from './FastenerHandle.tsx';
import styles from './labels.module.css';

/** A handle over each screw: to drag with the mouse, to nudge with the arrow keys. */
export function FastenerHandles() {
  const count = useModel((model) => model.fasteners.length);
  const arrows = useView((view) => view.arrows);
  return (
    <fieldset className={styles.layer} aria-label="Fasteners" data-arrows={arrows || undefined}>
      {Array.from({ length: count }, (_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a fastener is its place in the list
        <FastenerHandle key={index} index={index} />
      ))}
    </fieldset>
  );
}
