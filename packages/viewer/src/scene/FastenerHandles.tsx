import { mirrorAxesOf, mirrorLink } from '../state/mirror.ts';
import { useModel, usePointer, useView } from '../state/use-workbench.ts';
import { FastenerHandle } from './FastenerHandle.tsx';
import styles from './labels.module.css';

/** A handle over each screw: to drag with the mouse, to nudge with the arrow keys. */
export function FastenerHandles() {
  const count = useModel((model) => model.fasteners.length);
  const arrows = useView((view) => view.arrows);
  const linked = useLinked();
  return (
    <fieldset className={styles.layer} aria-label="Fasteners" data-arrows={arrows || undefined}>
      {Array.from({ length: count }, (_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a fastener is its place in the list
        <FastenerHandle key={index} index={index} linked={linked.includes(index)} />
      ))}
    </fieldset>
  );
}

/** Indices of the fasteners that move along with the chosen one. */
function useLinked(): readonly number[] {
  const { fasteners, sites } = useModel((model) => model);
  const chosen = useView((view) => view.mirror);
  const index = usePointer(({ selected }) => (selected?.startsWith('fastener ') ? Number(selected.slice(9)) : -1));
  const axes = mirrorAxesOf(chosen, { fasteners, sites });
  if (axes === null || fasteners[index] === undefined) return [];
  const places = fasteners.map(({ at }) => at);
  return mirrorLink(places, index, sites.origin ?? [0, 0], axes).partners.map((partner) => partner.index);
}
