import fc from 'fast-check';
import { between, unit } from './numbers.ts';

/** Values that no model expects where they are put. */
const numbers = fc.oneof(
  between(-200, 200),
  fc.integer({ min: -5, max: 70 }),
  fc.constantFrom(0, -0, 1e-300, 1e300, -1e300, 1e-3, 1e5, Number.MAX_SAFE_INTEGER),
);
const shapes = fc.oneof(
  fc.record({ rectangle: fc.tuple(numbers, numbers), centre: fc.tuple(numbers, numbers) }),
  fc.record({ circle: numbers, centre: fc.tuple(numbers, numbers) }),
  fc.record({ polygon: fc.array(fc.tuple(numbers, numbers), { maxLength: 8 }) }),
);
const strange = fc.constantFrom<unknown>(
  null,
  true,
  '',
  'all',
  'M2',
  'alumina-96',
  'constructor',
  '__proto__',
  'x'.repeat(300),
  '\u0000',
  '<img src=x onerror=alert(1)>',
  '=1+1',
  [],
  {},
  { constructor: { prototype: { polluted: true } } },
  undefined,
);
/** In place of a value: that number of the model times a factor. */
class Stretch {
  readonly factor: number;
  constructor(factor: number) {
    this.factor = factor;
  }
}
const anything = fc.oneof(
  { weight: 8, arbitrary: between(-0.5, 2.5).map((factor) => new Stretch(factor)) },
  { weight: 4, arbitrary: numbers },
  fc.tuple(numbers, numbers),
  strange,
  shapes,
);

/** Paths of all values of a model; the mesh stays, so that a case stays small. */
function pathsOf(value: unknown, path: readonly string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return path.length === 0 ? [] : [[...path]];
  const inner = Object.entries(value).flatMap(([key, child]) =>
    path.length === 0 && key === 'mesh' ? [] : pathsOf(child, [...path, key]),
  );
  return path.length === 0 ? inner : [[...path], ...inner];
}

const pick = unit.map((share) => share * 0.999999);
export const changes = fc.array(fc.tuple(pick, anything), { minLength: 1, maxLength: 3 });

/** A copy with some of its values replaced. */
export function altered(model: object, given: readonly (readonly [number, unknown])[]): object {
  const copy = structuredClone(model);
  for (const [where, value] of given) {
    const paths = pathsOf(copy);
    if (paths.length === 0) break;
    const keys = paths[Math.floor(where * paths.length)];
    const owner = keys.slice(0, -1).reduce((inner: object, key) => Reflect.get(inner, key), copy);
    const last = keys[keys.length - 1];
    const before: unknown = Reflect.get(owner, last);
    if (value instanceof Stretch) {
      if (typeof before === 'number')
        Reflect.set(owner, last, Number.isInteger(before) ? Math.round(before * value.factor) : before * value.factor);
    } else if (value === undefined) Reflect.deleteProperty(owner, last);
    else Reflect.set(owner, last, value);
  }
  return copy;
}

/** Ways to spoil a text. */
export const damage = fc.record({
  kind: fc.constantFrom('cut', 'flip', 'repeat', 'insert', 'swap', 'deepen'),
  where: pick,
  code: fc.constantFrom(0, 34, 44, 48, 57, 69, 91, 92, 93, 123, 125, 0xd800, 0xfeff, 0x2028),
});

export function damaged(text: string, { kind, where, code }: { kind: string; where: number; code: number }): string {
  const at = Math.floor(where * text.length);
  const letter = String.fromCharCode(code);
  switch (kind) {
    case 'cut':
      return text.slice(0, at);
    case 'flip':
      return text.slice(0, at) + letter + text.slice(at + 1);
    case 'repeat':
      return text.slice(0, at) + text.slice(Math.max(0, at - 40));
    case 'insert':
      return text.slice(0, at) + letter + text.slice(at);
    case 'swap':
      return text.slice(at) + text.slice(0, at);
    default:
      return text.slice(0, at) + '[{"a":'.repeat(200) + text.slice(at);
  }
}
