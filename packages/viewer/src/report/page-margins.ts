/** What runs along the edges of every printed page. */
export interface RunningWords {
  readonly name: string;
  readonly project: string;
  readonly hash: string;
  readonly version: string;
  readonly date: string;
}

/** Longest name that a running header has room for. */
const MOST = 60;

/** Style of the printed pages: running header and footer with page numbers, where the browser prints them. */
export function pageMargins({ name, project, hash, version, date }: RunningWords): string {
  const boxes = [
    ['top-left', quoted(short(name))],
    ['top-right', quoted(short(project))],
    ['bottom-left', quoted(`Flathead ${version}, model ${hash}`)],
    ['bottom-center', quoted(date)],
    ['bottom-right', '"Page " counter(page) " of " counter(pages)'],
  ];
  const rules = boxes.map(
    ([box, content]) => `@${box} { content: ${content}; font: 8pt system-ui, sans-serif; color: #50605f; }`,
  );
  return `@page { margin: 19mm 16mm 18mm; ${rules.join(' ')} }`;
}

function short(text: string): string {
  const letters = [...text];
  return letters.length > MOST ? `${letters.slice(0, MOST - 1).join('')}…` : text;
}

/** Any text as a string of a style sheet: all but letters and digits by number, so that nothing can end it. */
function quoted(text: string): string {
  const escaped = [...text].map((letter) =>
    /[a-z0-9]/i.test(letter) ? letter : `\\${letter.codePointAt(0)!.toString(16)} `,
  );
  return `"${escaped.join('')}"`;
}
