import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';

const bundle = fileURLToPath(new URL('../dist/flathead.cjs', import.meta.url));

/** Bundle that helper threads of a study run. */
export const helper = fileURLToPath(new URL('../dist/study-helper.cjs', import.meta.url));

/** What the engine has compiled of the bundle; only the very engine that wrote it can read it. */
export const compiled = `${bundle}.${process.versions.v8}`;

/**
 * Loads the bundled program. A check takes about a second, most of it spent on code that runs for the first time: code
 * compiled before is read from its file, and the engine is told to optimise four times later than a server would.
 *
 * @returns what `src/main.ts` exports, and the script it comes from; null if it is not built
 */
export function loadProgram() {
  if (!existsSync(bundle)) return null;
  setFlagsFromString('--interrupt-budget=250000');
  const script = new Script(`(function (require, module, exports) {${readFileSync(bundle, 'utf8')}\n})`, {
    filename: bundle,
    cachedData: existsSync(compiled) ? readFileSync(compiled) : undefined,
  });
  const module = { exports: {} };
  script.runInThisContext()(createRequire(bundle), module, module.exports);
  return { script, ...module.exports };
}
