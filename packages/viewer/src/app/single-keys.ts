const KEY = 'flathead-single-keys';

/** Whether keys without Ctrl act: who speaks to the computer, or steers it by such keys, switches them off. */
export function singleKeys(): boolean {
  try {
    return localStorage.getItem(KEY) !== 'off';
  } catch {
    return true;
  }
}

export function setSingleKeys(on: boolean): void {
  try {
    localStorage.setItem(KEY, on ? 'on' : 'off');
  } catch {
    // A browser that keeps nothing has them on.
  }
}
