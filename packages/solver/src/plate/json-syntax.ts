/** Where a text stops being JSON that can be trusted. */
export interface SyntaxFlaw {
  /** Index into the text. */
  readonly offset: number;
  /** Completes "line 3, column 5 ...". */
  readonly problem: string;
  /** `repetition`: one object has a key twice, which is legal JSON, but only the last would count. */
  readonly kind: 'syntax' | 'repetition' | 'depth';
}

type Expecting = 'a value' | 'a value or "]"' | 'a key' | 'a key or "}"' | 'a colon' | 'a comma or the end' | 'nothing';

/** Levels of nesting that are read; no model needs ten. */
const DEEPEST = 64;
const CLOSING = { object: '}', list: ']' } as const;
const SCALAR = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.])|(?:true|false|null)(?!\w)/y;
const SIMPLE_ESCAPES = '"\\/bfnrt';

/**
 * First flaw of a JSON text (RFC 8259), or `null`. Engines word such errors differently and often without a place;
 * this says the same everywhere. Iterative: depth of nesting is no danger.
 */
export function syntaxFlaw(text: string): SyntaxFlaw | null {
  const open: (Set<string> | null)[] = [];
  let expecting: Expecting = 'a value';
  for (let i = skipSpace(text, 0); ; i = skipSpace(text, i)) {
    const kind = open.length > 0 && open[open.length - 1] !== null ? 'object' : 'list';
    const c = text[i];
    if (expecting === 'nothing') return c === undefined ? null : unexpected(text, i, 'nothing more');
    if (c === undefined) return { offset: i, kind: 'syntax', problem: `ends where ${expecting} was expected` };

    const wantsKey: boolean = expecting === 'a key' || expecting === 'a key or "}"';
    const mayClose =
      expecting === 'a comma or the end' || expecting === 'a key or "}"' || expecting === 'a value or "]"';
    if (mayClose && c === CLOSING[kind]) {
      open.pop();
      i++;
      expecting = open.length === 0 ? 'nothing' : 'a comma or the end';
    } else if (expecting === 'a colon' || expecting === 'a comma or the end') {
      if (c !== (expecting === 'a colon' ? ':' : ',')) return unexpected(text, i, expecting);
      expecting = expecting === 'a colon' || kind === 'list' ? 'a value' : 'a key';
      i++;
    } else if (c === '"') {
      const end = stringEnd(text, i);
      if (typeof end !== 'number') return end;
      if (wantsKey) {
        const key = decoded(text.slice(i, end));
        const keys = open[open.length - 1]!;
        if (keys.has(key)) return { offset: i, kind: 'repetition', problem: `repeats the key "${key.slice(0, 60)}"` };
        keys.add(key);
      }
      expecting = wantsKey ? 'a colon' : open.length === 0 ? 'nothing' : 'a comma or the end';
      i = end;
    } else if (wantsKey) {
      return unexpected(text, i, expecting);
    } else if (c === '{' || c === '[') {
      if (open.length === DEEPEST) return { offset: i, kind: 'depth', problem: `nests deeper than ${DEEPEST} levels` };
      open.push(c === '{' ? new Set() : null);
      expecting = c === '{' ? 'a key or "}"' : 'a value or "]"';
      i++;
    } else {
      SCALAR.lastIndex = i;
      const scalar = SCALAR.exec(text);
      if (scalar === null) return unexpected(text, i, expecting);
      i += scalar[0].length;
      expecting = open.length === 0 ? 'nothing' : 'a comma or the end';
    }
  }
}

function skipSpace(text: string, from: number): number {
  let i = from;
  while (text[i] === ' ' || text[i] === '\n' || text[i] === '\r' || text[i] === '\t') i++;
  return i;
}

/** Index behind the closing quote of the string that opens at `start`, or its flaw. */
function stringEnd(text: string, start: number): number | SyntaxFlaw {
  for (let i = start + 1; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 0x22) return i + 1;
    if (code < 0x20) return { offset: start, kind: 'syntax', problem: 'opens a text that is not closed on its line' };
    if (code !== 0x5c) continue;
    i++;
    const hex = text[i] === 'u' && /^[\da-fA-F]{4}$/.test(text.slice(i + 1, i + 5));
    if (!hex && !SIMPLE_ESCAPES.includes(text[i] ?? ' '))
      return { offset: i - 1, kind: 'syntax', problem: 'has a backslash that escapes nothing; write "\\\\" for one' };
  }
  return { offset: start, kind: 'syntax', problem: 'opens a text that is never closed' };
}

function decoded(quoted: string): string {
  return quoted.includes('\\') ? String(JSON.parse(quoted)) : quoted.slice(1, -1);
}

function unexpected(text: string, offset: number, expected: string): SyntaxFlaw {
  const found =
    /^[\w.+-]{1,30}/.exec(text.slice(offset, offset + 30))?.[0] ?? String.fromCodePoint(text.codePointAt(offset)!);
  const hint =
    found === '/'
      ? '; JSON has no comments'
      : found === "'"
        ? '; texts go in double quotes'
        : found === '}' || found === ']'
          ? '; remove a comma before it, or close what is open'
          : expected.startsWith('a key')
            ? '; keys go in double quotes'
            : '';
  return { offset, kind: 'syntax', problem: `has ${JSON.stringify(found)} where ${expected} was expected${hint}` };
}
