/** A copy of plain data with one value replaced at a dotted path; `undefined` removes the key. */
export function withValue(data: unknown, path: string, value: unknown): unknown {
  const dot = path.indexOf('.');
  const key = dot < 0 ? path : path.slice(0, dot);
  const child = (of: unknown): unknown => (dot < 0 ? value : withValue(of, path.slice(dot + 1), value));
  if (Array.isArray(data)) return data.map((item, i) => (String(i) === key ? child(item) : item));
  const object: Record<string, unknown> = { ...(isObject(data) ? data : {}) };
  const next = child(object[key]);
  if (next === undefined) delete object[key];
  else object[key] = next;
  return object;
}

/** The value at a dotted path; `undefined` when there is none. */
export function valueAt(data: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => {
    if (Array.isArray(at)) return at[Number(key)];
    return isObject(at) ? at[key] : undefined;
  }, data);
}

function isObject(data: unknown): data is Record<string, unknown> {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}
