// Writes docs/api.md: every name that @flathead/solver offers, its type and the first sentence of its documentation, read
// from the sources by the compiler. With --check it ends with 1 when the page is not current.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const PAGE = root('docs/api.md');
const { exports } = JSON.parse(readFileSync(root('packages/solver/package.json'), 'utf8'));
const entries = Object.entries(exports).map(([name, file]) => ({
  name: name.replace('.', '@flathead/solver'),
  file: root(`packages/solver/${file}`),
}));
const config = ts.getParsedCommandLineOfConfigFile(root('packages/solver/tsconfig.pack.json'), {}, ts.sys);
const program = ts.createProgram(
  entries.map(({ file }) => file),
  config.options,
);
const checker = program.getTypeChecker();
const text = page();

if (process.argv.includes('--check')) {
  if (readFileSync(PAGE, 'utf8') !== text) {
    console.error(
      'docs/api.md is not current: what @flathead/solver offers has changed. Run npm run api and look at it.',
    );
    process.exitCode = 1;
  }
} else writeFileSync(PAGE, text);

function page() {
  return [
    '# What `@flathead/solver` offers',
    '',
    'Written by `npm run api` from the sources; the checks fail when it is not current, so that every change of the public',
    'surface shows. Lengths are mm, forces N, stresses MPa, temperatures degC. Ten-line scripts are in [examples](examples).',
    'Of types that follow from a schema only the fields are listed; what they hold is in [models/schema](../models/schema)',
    'and [studies.md](studies.md).',
    '',
    ...entries.flatMap(section),
  ].join('\n');
}

function section({ name, file }) {
  const module = checker.getSymbolAtLocation(program.getSourceFile(file));
  const names = module === undefined ? [] : checker.getExportsOfModule(module);
  const head = [`## ${name}`, ''];
  if (names.length === 0) return [...head, 'Runs in a web worker and answers there; it exports nothing.', ''];
  const sorted = names.toSorted((a, b) => (a.name < b.name ? -1 : 1));
  return [...head, ...sorted.flatMap(described)];
}

function described(exported) {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  const comment = ts.displayPartsToString(symbol.getDocumentationComment(checker));
  const sentence = comment
    .replace(/\s+/g, ' ')
    .match(/^.*?[.:](?= |$)|^.+/)?.[0]
    .replace(/:$/, '.');
  return ['```ts', ...declared(exported.name, symbol), '```', '', ...(sentence ? [sentence, ''] : [])];
}

/** As it is declared in the sources; what follows from a schema by the names of its fields. */
function declared(name, symbol) {
  const [at] = symbol.declarations;
  if (ts.isFunctionDeclaration(at))
    return symbol.declarations
      .filter((one) => one.body === undefined || symbol.declarations.length === 1)
      .map((one) => `function ${name}${plain(one, one.name.end, one.type?.end ?? one.body.pos)};`);
  if (ts.isInterfaceDeclaration(at)) {
    const above = (at.heritageClauses ?? []).map((clause) => ` ${plain(clause)}`).join('');
    return [`interface ${name}${above} {`, ...at.members.map((member) => `  ${plain(member)}`), '}'];
  }
  if (ts.isClassDeclaration(at)) {
    const above = (at.heritageClauses ?? []).map((clause) => ` ${plain(clause)}`).join('');
    const shown = at.members.map((member) => `  ${plain(member, member.getStart(), member.body?.pos ?? member.end)}`);
    return [`class ${name}${above} {`, ...shown.map((line) => line.replace(/;?$/, ';')), '}'];
  }
  if (ts.isTypeAliasDeclaration(at) && !plain(at.type).startsWith('z.infer'))
    return [`type ${name} = ${plain(at.type).replace(/^\| /, '')};`];
  if (ts.isTypeAliasDeclaration(at)) {
    return [`type ${name} = ${written(checker.getDeclaredTypeOfSymbol(symbol))};`];
  }
  if (at.type !== undefined) return [`const ${name}: ${plain(at.type)};`];
  return [`const ${name}: ${checker.getTypeOfSymbolAtLocation(symbol, at).symbol?.name ?? plain(at.initializer)};`];
}

/** A type that follows from a schema. */
function written(type) {
  if (type.isUnion()) return type.types.map(written).toSorted().join(' | ');
  const [element] = checker.isArrayType(type) ? checker.getTypeArguments(type) : [];
  if (element !== undefined) return `(${written(element)})[]`;
  if (!(type.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection))) return checker.typeToString(type);
  const fields = type.getProperties();
  return `{ ${fields.map(({ name, flags }) => `${name}${flags & ts.SymbolFlags.Optional ? '?' : ''}`).join(', ')} }`;
}

/** Source of a node, or of a part of its file, on one line and without comments. */
function plain(node, begin = node.getStart(), end = node.end) {
  return node
    .getSourceFile()
    .text.slice(begin, end)
    .replace(/\/\*.*?\*\//gs, '')
    .replace(/\/\/.*$/gm, '')
    .replace(/\s+/g, ' ')
    .replace(/([({[]) (?=[^{}]*\))/g, '$1')
    .trim();
}
