// Follows every link of README.md, the other pages at the root and all of docs/ that leads to a file of the repository, and
// to a heading in it; ends with 1 when one leads nowhere. Looks at no other place: web addresses are not asked for.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));
const inDocs = readdirSync(join(root, 'docs'), { recursive: true }).map((name) => join('docs', name));
const pages = [...readdirSync(root), ...inDocs].filter((name) => name.endsWith('.md'));
const broken = pages.flatMap((page) => linksOf(page).flatMap((link) => wrong(page, link) ?? []));
const followed = pages.reduce((sum, page) => sum + linksOf(page).length, 0);
if (followed < 10) broken.push(`only ${followed} links seen in ${pages.length} pages`);
for (const line of broken) console.error(line);
console.log(`${followed} links in ${pages.length} pages, ${broken.length} broken`);
process.exitCode = broken.length === 0 ? 0 : 1;

/** Links and pictures outside code that stay in the repository, with their lines. */
function linksOf(page) {
  const links = [];
  let fenced = false;
  for (const [i, line] of readFileSync(join(root, page), 'utf8').split('\n').entries()) {
    if (/^\s*```/.test(line)) fenced = !fenced;
    if (fenced) continue;
    for (const [, target] of line.replace(/`[^`]*`/g, '').matchAll(/\]\(\s*<?([^)\s>]+)>?[^)]*\)/g))
      if (!/^[a-z][a-z+.-]*:/i.test(target)) links.push({ line: i + 1, target });
  }
  return links;
}

/** What is wrong with a link; null if nothing. */
function wrong(page, { line, target }) {
  const [path, anchor] = target.split('#');
  const file = path === '' ? page : normalize(join(dirname(page), decodeURIComponent(path)));
  const where = `${page}:${line}: ${target}`;
  if (relative(root, join(root, file)).startsWith('..')) return `${where} leads out of the repository`;
  if (!existsSync(join(root, file))) return `${where}: there is no ${file}`;
  if (anchor === undefined || statSync(join(root, file)).isDirectory()) return null;
  if (!file.endsWith('.md')) return null;
  return anchorsOf(file).has(anchor) ? null : `${where}: ${file} has no heading "${anchor}"`;
}

/** Headings as their anchors: small letters, dashes for blanks, no marks; alike ones are counted. */
function anchorsOf(page) {
  const seen = new Map();
  const anchors = new Set();
  let fenced = false;
  for (const line of readFileSync(join(root, page), 'utf8').split('\n')) {
    if (/^\s*```/.test(line)) fenced = !fenced;
    const title = fenced ? undefined : line.match(/^#{1,6} +(.*?)(?: +#+)?$/)?.[1];
    if (title === undefined) continue;
    const plain = title.replace(/\[([^\]]*)\]\([^)]*\)/g, '$1').toLowerCase();
    const anchor = plain.replace(/[^\p{L}\p{N}_ -]/gu, '').replace(/ /g, '-');
    const before = seen.get(anchor) ?? 0;
    seen.set(anchor, before + 1);
    anchors.add(before === 0 ? anchor : `${anchor}-${before}`);
  }
  return anchors;
}
