/** Which of several tabs keeps the workbook. */
export interface Turn {
  /** Asks the tab whose turn it is to hand over; takes the turn from one that does not answer. */
  take(): void;
}

export interface TurnEvents {
  /** It is this tab's turn. @param waited another tab had it before */
  ours(waited: boolean): void;
  /** Another tab has it. */
  elsewhere(): void;
  /** Another tab wants it; resolves when all is kept. */
  handOver(): Promise<void>;
}

const NAME = 'flathead-workbook';
/** A tab that was asked to hand over and has not by then is gone or asleep, ms. */
const PATIENCE = 1500;

/** Waits for this tab's turn by a lock that the browser gives to one tab and takes back however that tab ends. */
export function waitForTurn({ locks }: Navigator, events: TurnEvents): Turn {
  if (locks === undefined) {
    events.ours(false);
    return { take: () => {} };
  }
  const channel = new BroadcastChannel(NAME);
  let release: (() => void) | null = null;
  let queued = new AbortController();

  const hold = (waited: boolean) => (): Promise<void> => {
    events.ours(waited);
    return new Promise((resolve) => {
      release = resolve;
    });
  };
  const lose = (): void => {
    release = null;
    events.elsewhere();
    queue();
  };
  const queue = (): void => {
    queued = new AbortController();
    locks.request(NAME, { signal: queued.signal }, hold(true)).then(lose, (thrown: unknown) => {
      // Taken by another tab once it was ours; called off by ourselves before.
      if (release !== null || !queued.signal.aborted) lose();
      else if (!(thrown instanceof DOMException)) throw thrown;
    });
  };
  channel.onmessage = () => {
    if (release !== null) void events.handOver().then(() => release?.());
  };
  locks.request(NAME, { ifAvailable: true }, (lock) => (lock === null ? 'taken' : hold(false)())).then(lose, lose);
  return {
    take() {
      if (release !== null) return;
      channel.postMessage('wanted');
      setTimeout(() => {
        if (release !== null) return;
        queued.abort();
        locks.request(NAME, { steal: true }, hold(true)).then(lose, lose);
      }, PATIENCE);
    },
  };
}
