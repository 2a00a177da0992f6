/** A model as JSON that a person can read: lists of plain values on one line, everything else indented. */
export function readableJson(value: unknown, indent = ''): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    const flat = value.every((item) => typeof item !== 'object' || item === null);
    if (flat) return `[${value.map((item) => JSON.stringify(item)).join(', ')}]`;
    return `[\n${value.map((item) => deeper + readableJson(item, deeper)).join(',\n')}\n${indent}]`;
  }
  const held = Object.entries(value).filter(([, item]) => item !== undefined);
  const short = `{ ${held.map(([key, item]) => `${JSON.stringify(key)}: ${readableJson(item, deeper)}`).join(', ')} }`;
  if (indent !== '' && short.length <= 100 && !short.includes('\n')) return held.length === 0 ? '{}' : short;
  const lines = held.map(([key, item]) => `${deeper}${JSON.stringify(key)}: ${readableJson(item, deeper)}`);
  return `{\n${lines.join(',\n')}\n${indent}}`;
}
