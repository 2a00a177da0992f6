import { XmlElement } from '@rgrove/parse-xml';

/** Name of an element without its prefix. */
export function plainName({ name }: XmlElement): string {
  return name.slice(name.indexOf(':') + 1);
}

/** Elements of a name below another, whatever their prefix, in order; those within one found are not looked for. */
export function elementsOf(root: XmlElement | null, name: string): XmlElement[] {
  const found: XmlElement[] = [];
  const walk = ({ children }: XmlElement): void => {
    for (const child of children) {
      if (!(child instanceof XmlElement)) continue;
      if (plainName(child) === name) found.push(child);
      else walk(child);
    }
  };
  if (root !== null) walk(root);
  return found;
}
