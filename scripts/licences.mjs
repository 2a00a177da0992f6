// Lists the licences of all packages that are installed into docs/licences.md, and ends with 1 when one is not allowed, or,
// with --check, when the list is not current. Reads package.json files in
// node_modules and the lock file, whose packages must come with a checksum and no address.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const CHAPTER = root('docs/licences.md');
/** May be used and shipped with their notice kept; weak copyleft only in tools that are not shipped. */
const ALLOWED = new Set([
  'MIT',
  'MIT-0',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'Unlicense',
  'CC0-1.0',
  'CC-BY-4.0',
  'Python-2.0',
  'BSL-1.0',
  'Zlib',
  'WTFPL',
]);
const ALLOWED_IN_TOOLS = new Set([...ALLOWED, 'MPL-2.0']);

/** Packages that name no licence in their package.json, as read in the licence file they come with. */
const READ = { 'webgl-constants 1.1.1': 'MIT' };

const lock = JSON.parse(readFileSync(root('package-lock.json'), 'utf8'));
const packages = new Map();
const problems = [];
for (const [place, entry] of Object.entries(lock.packages)) {
  if (!place.includes('node_modules/') || entry.link) continue;
  const manifest = join(root('.'), place, 'package.json');
  // Binaries for other machines are not installed; the lock file knows their licence.
  const { name, version, license, licenses } = existsSync(manifest)
    ? JSON.parse(readFileSync(manifest, 'utf8'))
    : { name: place.split('node_modules/').at(-1), version: entry.version, license: entry.license };
  const given =
    typeof license === 'string'
      ? license
      : (license?.type ?? licenses?.map(({ type }) => type).join(' OR ') ?? READ[`${name} ${version}`] ?? 'none given');
  if (entry.resolved !== undefined)
    problems.push(
      `${place} of the lock file names an address, ${entry.resolved}; npm finds packages by name and checksum`,
    );
  if (entry.integrity === undefined) problems.push(`${place} of the lock file has no checksum`);
  const shipped = entry.dev !== true && entry.devOptional !== true;
  packages.set(`${name} ${version}`, { name, version, licence: given, shipped });
  if (!allowed(given, shipped ? ALLOWED : ALLOWED_IN_TOOLS))
    problems.push(`${name} ${version} is under "${given}", which is not in the list of allowed licences`);
}
if (packages.size < 50 || readdirSync(root('node_modules')).length < 50)
  problems.push(`only ${packages.size} packages seen: run npm ci first`);

const text = chapter(
  [...packages.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1)),
);
if (process.argv.includes('--check')) {
  if (!existsSync(CHAPTER) || readFileSync(CHAPTER, 'utf8') !== text)
    problems.push('docs/licences.md is not current: run npm run licences');
} else writeFileSync(CHAPTER, text);
for (const problem of problems) console.error(problem);
console.log(`${packages.size} packages, ${problems.length} problems`);
process.exitCode = problems.length === 0 ? 0 : 1;

/** Any of the alternatives of an SPDX expression; all parts of a conjunction. */
function allowed(expression, list) {
  const plain = expression.replace(/[()]/g, '');
  return plain.split(/ OR /).some((side) => side.split(/ AND /).every((part) => list.has(part.trim())));
}

function chapter(all) {
  const rows = (shipped) =>
    all
      .filter((each) => each.shipped === shipped)
      .map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`)
      .join('\n');
  const count = Object.entries(grouped(all))
    .map(([licence, list]) => [licence, list.length])
    .sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return `# Licences of what Flathead is built with

Written by \`npm run licences\` from the packages that are installed; \`npm test\` fails when it is not current or a licence is not
allowed. ${count.map(([licence, n]) => `${n} ${licence}`).join(', ')}.

## In what is shipped

| package | version | licence |
|---|---|---|
${rows(true)}

## In tools to build and check with

| package | version | licence |
|---|---|---|
${rows(false)}
`;
}

function grouped(all) {
  const groups = {};
  for (const each of all) groups[each.licence] = [...(groups[each.licence] ?? []), each];
  return groups;
}
