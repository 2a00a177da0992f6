/** Executable of a Chromium for the browser tests, or undefined when there is none. */
export function findChromium(): string | undefined;
