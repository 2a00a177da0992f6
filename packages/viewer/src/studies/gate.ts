/** A way that can be shut: who comes while it is shut waits until it opens. */
export function createGate() {
  let isOpen = true;
  let waiting: (() => void)[] = [];
  return {
    put(open: boolean): void {
      isOpen = open;
      if (!open) return;
      const all = waiting;
      waiting = [];
      for (const go of all) go();
    },
    async passed(): Promise<void> {
      if (!isOpen) await new Promise<void>((resolve) => void waiting.push(resolve));
    },
  };
}
