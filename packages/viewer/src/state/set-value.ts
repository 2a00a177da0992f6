/** A copy of plain data with one value replaced at a dotted path; `undefined` removes the key. A point in a key is `\\.`. */
export function withValue(data: unknown, path: string, value: unknown): unknown {
  return withValueAt(data, keysOf(path), value);
}

/** A name as a key of a path. */
export function asKey(name: string): string {
  return name.replaceAll('.', '\\.');
}

function keysOf(path: string): string[] {
  return path.split(/(?<!\\)\./).map((key) => key.replaceAll('\\.', '.'));
}

function withValueAt(data: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  const child = (of: unknown): unknown => (rest.length === 0 ? value : withValueAt(of, rest, value));
  if (Array.isArray(data)) return data.map((item, i) => (String(i) === key ? child(item) : item));
  const object: Record<string, unknown> = { ...(isObject(data) ? data : {}) };
  const next = child(object[key]);
  if (next === undefined) delete object[key];
  else object[key] = next;
  return object;
}

/** The value at a dotted path; `undefined` when there is none. */
export function valueAt(data: unknown, path: string): unknown {
  return keysOf(path).reduce<unknown>((at, key) => {
    if (Array.isArray(at)) return at[Number(key)];
    return isObject(at) ? at[key] : undefined;
  }, data);
}

function isObject(data: unknown): data is Record<string, unknown> {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}
