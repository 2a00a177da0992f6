import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { findChromium } from '../../scripts/find-chromium.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Headless, as any user, drawing in software, and quiet on the network. */
const FLAGS = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Messages on the console that are no fault of ours, each with its reason. */
const ALLOWED = [
  /THREE\.Clock: This module has been deprecated/, // @react-three/fiber still creates one
  /GPU stall due to ReadPixels/, // the software renderer about a screenshot
];

/** The workbench open in a page, with everything it complained about. */
export interface Workbench {
  readonly page: Page;
  /** Errors and warnings on the console, uncaught errors and failed requests so far. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

export const hasBrowser = findChromium() !== undefined;

export async function launchBrowser(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('No Chromium: install it or set CHROMIUM_PATH.');
  return chromium.launch({ executablePath, args: FLAGS });
}

/** A fresh visitor: nothing stored, a page that listens for complaints from its first byte. */
export async function openWorkbench(
  browser: Browser,
  url: string,
  { colourScheme = 'light' }: { colourScheme?: 'light' | 'dark' } = {},
): Promise<Workbench> {
  const context = await browser.newContext({
    colorScheme: colourScheme,
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
    locale: 'en-GB',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  const complain = (text: string): void => {
    if (!ALLOWED.some((allowed) => allowed.test(text))) complaints.push(text);
  };
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complain(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => complain(`uncaught: ${error.message}`));
  page.on('requestfailed', (request) => complain(`failed: ${request.url()} ${request.failure()?.errorText ?? ''}`));
  page.on('response', (response) => {
    if (response.status() >= 400) complain(`${response.status()}: ${response.url()}`);
  });
  await page.goto(url);
  return { page, complaints, close: () => context.close() };
}

/** What `flathead check - --json` says about a model: the independent route to the numbers on the page. */
export function checkOnCommandLine(model: string): Promise<{ code: number | null; output: unknown }> {
  return new Promise((resolve, reject) => {
    const flathead = join(root, 'packages', 'cli', 'bin', 'flathead.js');
    const child = spawn(process.execPath, [flathead, 'check', '-', '--json'], { cwd: root });
    let stdout = '';
    child.stdout.on('data', (chunk) => {
      stdout += chunk;
    });
    child.on('error', reject);
    child.on('close', (code) => {
      try {
        resolve({ code, output: JSON.parse(stdout) });
      } catch {
        reject(new Error(`flathead check ended with ${code} and no JSON: ${stdout.slice(0, 500)}`));
      }
    });
    child.stdin.end(model);
  });
}

/** Text of the file that a click on the page saves. */
export async function downloaded(page: Page, click: () => Promise<void>): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), click()]);
  return readFile(await download.path(), 'utf8');
}

/** Where a picture goes: docs/ when UPDATE_PICTURES=1, else a temporary folder. */
export async function picturePath(name: string): Promise<string> {
  if (process.env.UPDATE_PICTURES === '1') {
    await mkdir(join(root, 'docs'), { recursive: true });
    return join(root, 'docs', name);
  }
  return join(await mkdtemp(join(tmpdir(), 'flathead-pictures-')), name);
}
