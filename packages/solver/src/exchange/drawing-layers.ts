import { Fault } from '../fault/fault.ts';
import { didYouMean } from '../plate/near-names.ts';

export function wantedLayers(
  asked: readonly string[] | undefined,
  names: readonly string[],
  shown: readonly string[],
): ReadonlySet<string> {
  if (asked === undefined || asked.length === 0) return new Set(shown);
  return new Set(
    asked.map((name) => {
      const found = names.find((known) => known.toLowerCase() === name.toLowerCase());
      if (found !== undefined) return found;
      throw new Fault(
        'USAGE',
        `The drawing has no layer "${name}".${didYouMean(name, names)} Its layers are ${names
          .map((known) => `"${known}"`)
          .join(', ')
          .slice(0, 300)}.`,
        '',
        { value: name, expected: names },
      );
    }),
  );
}
