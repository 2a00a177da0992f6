import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** A word on a printed page; its box from the upper left corner, points. */
export interface PdfWord {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly words: readonly PdfWord[];
  /** Its words line by line from the top, over all columns. */
  readonly text: string;
}

/** What a PDF says and where, by pdftotext. */
export async function pdfPages(pdf: Buffer): Promise<PdfPage[]> {
  const folder = await mkdtemp(join(tmpdir(), 'flathead-report-'));
  try {
    const [from, to] = [join(folder, 'report.pdf'), join(folder, 'report.xml')];
    await writeFile(from, pdf);
    await run('pdftotext', ['-bbox', from, to]);
    return (await readFile(to, 'utf8')).split('<page ').slice(1).map(pageOf);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function pageOf(xml: string): PdfPage {
  const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/.exec(xml)!;
  const words = [
    ...xml.matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g),
  ].map(
    ([, left, top, right, bottom, text]): PdfWord => ({
      text: plain(text),
      ...{ left: Number(left), right: Number(right), top: Number(top), bottom: Number(bottom) },
    }),
  );
  const text = linesOf(words)
    .map((line) => line.map((word) => word.text).join(' '))
    .join(' ');
  return { width: Number(width), height: Number(height), words, text };
}

/** Words whose middles are no farther apart in height, points, stand on one line. */
const SAME_LINE = 2.5;

function linesOf(words: readonly PdfWord[]): PdfWord[][] {
  const middle = ({ top, bottom }: PdfWord): number => (top + bottom) / 2;
  const lines: PdfWord[][] = [];
  for (const word of words.toSorted((a, b) => middle(a) - middle(b))) {
    const line = lines.at(-1);
    if (line !== undefined && middle(word) - middle(line[0]) < SAME_LINE) line.push(word);
    else lines.push([word]);
  }
  return lines.map((line) => line.sort((a, b) => a.left - b.left));
}

function plain(xml: string): string {
  const named = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
  return xml.replace(/&(amp|lt|gt|quot|apos);/g, (_, name: keyof typeof named) => named[name]);
}
