import type { StageFrame } from './stage-frame.ts';

/** A `ref` of a row of tools over the stage: keeps account of what each takes of it. */
export function toolWatch(stage: StageFrame) {
  return (row: HTMLElement | null) => {
    if (row === null || !(row.offsetParent instanceof HTMLElement)) return;
    const [whole, tools] = [row.offsetParent, [...row.children]];
    const keyOf = (i: number): string => `${row.className} ${i}`;
    const watch = new ResizeObserver(() => {
      const corner = whole.getBoundingClientRect();
      tools.forEach((tool, i) => {
        const { left, top, width, height } = tool.getBoundingClientRect();
        stage.tools.set(keyOf(i), { left: left - corner.left, top: top - corner.top, width, height });
      });
      stage.redraw();
    });
    for (const element of [whole, ...tools]) watch.observe(element);
    return () => {
      watch.disconnect();
      tools.forEach((_, i) => {
        stage.tools.delete(keyOf(i));
      });
    };
  };
}
