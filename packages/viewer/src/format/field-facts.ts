import schema from '../../../../models/schema/head-model.schema.json';

/** What the schema of a head says of a number of it. */
export interface FieldFacts {
  readonly least: number | null;
  readonly most: number | null;
  readonly whole: boolean;
  readonly description: string | null;
}

interface Node {
  readonly $ref?: string;
  readonly type?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly additionalProperties?: Node | boolean;
  readonly prefixItems?: readonly Node[];
  readonly items?: Node | boolean;
  readonly anyOf?: readonly Node[];
}

const ROOT: Node = schema;
const DEFINED: Readonly<Record<string, Node>> = schema.$defs;

/** Range and meaning of the number at a path such as `fasteners.3.at.0`; `null` where the schema has none there. */
export function fieldFacts(path: string): FieldFacts | null {
  // A point in a name of the engineer's is written `\\.`.
  return factsAt(ROOT, path.split(/(?<!\\)\./));
}

function factsAt(node: Node, keys: readonly string[]): FieldFacts | null {
  if (node.$ref !== undefined) return factsAt(DEFINED[node.$ref.replace('#/$defs/', '')], keys);
  for (const option of node.anyOf ?? []) {
    const found = factsAt(option, keys);
    if (found !== null) return found;
  }
  const [key, ...rest] = keys;
  if (key === undefined) return node.type === 'number' || node.type === 'integer' ? factsOf(node) : null;
  const child =
    node.properties?.[key] ??
    node.prefixItems?.[Number(key)] ??
    asNode(node.items) ??
    asNode(node.additionalProperties);
  return child === undefined ? null : factsAt(child, rest);
}

function asNode(node: Node | boolean | undefined): Node | undefined {
  return typeof node === 'object' ? node : undefined;
}

function factsOf({ type, minimum, maximum, exclusiveMinimum, exclusiveMaximum, description }: Node): FieldFacts {
  return {
    least: minimum ?? exclusiveMinimum ?? null,
    most: maximum ?? exclusiveMaximum ?? null,
    whole: type === 'integer',
    description: description ?? null,
  };
}

/** Every path of a number in a head, with `*` for the place in a list or a name of the engineer's. */
export function numberPaths(): string[] {
  const paths = new Set<string>();
  const walk = (node: Node, at: readonly string[]): void => {
    if (node.$ref !== undefined) walk(DEFINED[node.$ref.replace('#/$defs/', '')], at);
    for (const option of node.anyOf ?? []) walk(option, at);
    for (const [key, child] of Object.entries(node.properties ?? {})) walk(child, [...at, key]);
    for (const [i, child] of (node.prefixItems ?? []).entries()) walk(child, [...at, String(i)]);
    for (const inner of [asNode(node.items), asNode(node.additionalProperties)])
      if (inner !== undefined) walk(inner, [...at, '*']);
    if (node.type === 'number' || node.type === 'integer') paths.add(at.join('.'));
  };
  walk(ROOT, []);
  return [...paths];
}
