import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];

const KNOWN = {
  linux: ['/usr/bin', '/usr/local/bin', '/snap/bin'].flatMap((folder) => NAMES.map((name) => join(folder, name))),
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ],
  win32: [process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA]
    .filter(Boolean)
    .map((folder) => join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe')),
};

/**
 * Executable of a Chromium for the browser tests: CHROMIUM_PATH if set, else on PATH, else where it usually is.
 *
 * @returns {string | undefined} undefined when there is none, or when CHROMIUM_PATH points at nothing
 */
export function findChromium() {
  const asked = process.env.CHROMIUM_PATH;
  if (asked) return executable(asked) ? asked : undefined;
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .filter(Boolean)
    .flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...onPath, ...(KNOWN[process.platform] ?? [])].find(executable);
}

/** @param {string} path */
function executable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
