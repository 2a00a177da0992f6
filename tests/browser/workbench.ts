import { readFile } from 'node:fs/promises';
import type { HeadModel, Verdict } from '@flathead/solver';
import { type Browser, chromium, type Locator, type Page, type Route } from 'playwright-core';
import { findChromium } from '../../scripts/find-chromium.mjs';
import { flathead } from '../command-line/run.ts';

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

/**
 * The page is put together without the renderer in software, which takes three times as long over it. Each frame of the
 * stage is read back for that: a fast drag of a large head is held up.
 */
const PUT_TOGETHER_APART = '--disable-gpu-compositing';

/** Messages on the console that are no fault of ours, each with its reason. */
const ALLOWED = [
  /THREE\.Clock: This module has been deprecated/, // @react-three/fiber still creates one
  /GPU stall due to ReadPixels/, // the software renderer about a screenshot
  /Service Worker registration blocked by Playwright/, // asked for by openWorkbench
];

/** The workbench open in a page, with everything it complained about. */
export interface Workbench {
  readonly page: Page;
  /** When it was asked for, ms of `performance.now()`. */
  readonly opened: number;
  /** Errors and warnings on the console, uncaught errors and failed requests so far. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

export const hasBrowser = findChromium() !== undefined;

/** @param timed as a visitor's, though it takes more processor time in all */
export async function launchBrowser({ timed = false } = {}): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('No Chromium: install it or set CHROMIUM_PATH.');
  return chromium.launch({ executablePath, args: timed ? FLAGS : [...FLAGS, PUT_TOGETHER_APART] });
}

interface Visitor {
  readonly colourScheme?: 'light' | 'dark';
  /** With the headers that let threads share memory. */
  readonly isolated?: boolean;
  /** The browser can draw in three dimensions. */
  readonly webgl?: boolean;
  /** What is drawn in three dimensions is drawn: without, the calls that take a renderer in software its time do nothing. */
  readonly draws?: boolean;
  /** Things may glide to where they go; without, they jump, as for who asks for less motion: far fewer frames to draw. */
  readonly glides?: boolean;
  /** The browser may keep the page for visits without a network. */
  readonly keeps?: boolean;
}

/** A fresh visitor: nothing stored, a page that listens for complaints from its first byte. */
export async function openWorkbench(
  browser: Browser,
  url: string,
  { colourScheme = 'light', isolated = true, webgl = true, draws = true, glides = true, keeps = false }: Visitor = {},
): Promise<Workbench> {
  const context = await browser.newContext({
    colorScheme: colourScheme,
    reducedMotion: glides ? 'no-preference' : 'reduce',
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
    locale: 'en-GB',
    serviceWorkers: keeps ? 'allow' : 'block',
  });
  if (!webgl)
    await context.addInitScript(() => {
      const { getContext } = HTMLCanvasElement.prototype;
      HTMLCanvasElement.prototype.getContext = new Proxy(getContext, {
        apply: (target, canvas, args) => (/webgl/.test(String(args[0])) ? null : Reflect.apply(target, canvas, args)),
      });
    });
  if (!draws)
    await context.addInitScript(() => {
      for (const call of [
        'clear',
        'drawArrays',
        'drawElements',
        'drawArraysInstanced',
        'drawElementsInstanced',
      ] as const)
        WebGL2RenderingContext.prototype[call] = () => {};
    });
  if (!isolated) await context.route(url, serveUnisolated);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
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
  const opened = performance.now();
  await page.goto(url);
  return { page, opened, complaints, close: () => context.close() };
}

/** Hands a page over without the headers that isolate it, as a plain web server would. */
async function serveUnisolated(route: Route): Promise<void> {
  const response = await route.fetch();
  const headers = Object.entries(response.headers()).filter(([name]) => !name.startsWith('cross-origin-'));
  await route.fulfill({ response, headers: Object.fromEntries(headers) });
}

/** Waits until the full answer shown, with its error, is that of the head shown. */
export async function settled(page: Page): Promise<void> {
  await page.locator('[data-testid="verdict"][data-quality="full"]:not([data-stale])').waitFor();
}

/** Waits until a frame with the head and its bow has been drawn. */
export async function drawn(page: Page): Promise<void> {
  await page.locator('[data-testid="stage"] canvas[data-drawn]').waitFor();
}

/**
 * Share of the pixels of the stage, without its rim of tools, that are clearly coloured: field and hatch are, backdrop,
 * grid and steel are not.
 */
export async function colouredShare(page: Page): Promise<number> {
  const box = await page.getByTestId('stage').boundingBox();
  if (box === null) throw new Error('There is no stage on the page.');
  const clip = { x: box.x, y: box.y + 60, width: box.width, height: box.height - 160 };
  const png = (await page.screenshot({ clip })).toString('base64');
  return page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
    if (context === null) throw new Error('No canvas to read the picture with.');
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    let coloured = 0;
    for (let i = 0; i < data.length; i += 4)
      if (Math.max(data[i], data[i + 1], data[i + 2]) - Math.min(data[i], data[i + 1], data[i + 2]) > 40) coloured++;
    return coloured / (data.length / 4);
  }, png);
}

/** Digits of the bow in um as the page shows them, such as `74.8`. */
export async function shownBow(page: Page): Promise<string> {
  return (await page.getByTestId('bow-value').textContent()) ?? '';
}

/** The model as the page saves it to a file. */
export async function savedModel(page: Page): Promise<HeadModel> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId('save').click()]);
  return JSON.parse(await readFile(await download.path(), 'utf8'));
}

/** Clicks on a switch; the mouse meets its drawn track, which lies over the input that the test id is on. */
export async function switchOn(page: Page, testId: string): Promise<void> {
  await page.getByTestId(testId).check({ force: true });
}

interface Held {
  release(): Promise<void>;
  /** Where the mouse was pressed, px. */
  readonly x: number;
  readonly y: number;
}

/** Box of a thing once it stays where it is: the view may still be turning, or the page making room. */
async function still(page: Page, testId: string): ReturnType<Locator['boundingBox']> {
  const thing = page.getByTestId(testId);
  for (let box = await thing.boundingBox(), k = 0; ; k++) {
    await page.waitForTimeout(150);
    const now = await thing.boundingBox();
    if (k > 60 || (now !== null && JSON.stringify(now) === JSON.stringify(box))) return now;
    box = now;
  }
}

/** Presses the mouse on a fastener and pulls it over the stage, px; it is still held when this returns. */
export function dragFastener(page: Page, name: string, by: { readonly x: number; readonly y: number }): Promise<Held> {
  return dragHandle(page, `fastener-${name}`, by);
}

/** The same with any handle of the stage. */
export async function dragHandle(
  page: Page,
  testId: string,
  by: { readonly x: number; readonly y: number },
): Promise<Held> {
  const box = await still(page, testId);
  if (box === null) throw new Error(`${testId} is not on the stage.`);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + by.x, y + by.y, { steps: 12 });
  return { release: () => page.mouse.up(), x, y };
}

/** Pulls a fastener around in small circles for so many ms, a step each 16 ms. */
export async function circleFastener(page: Page, name: string, ms: number): Promise<void> {
  const { release, x, y } = await dragFastener(page, name, { x: -20, y: 0 });
  const end = performance.now() + ms;
  for (let k = 0; performance.now() < end; k++) {
    await page.mouse.move(x - 20 + 15 * Math.cos(k / 6), y + 15 * Math.sin(k / 6));
    await page.waitForTimeout(16);
  }
  await release();
}

/**
 * Time from the page hearing of each of some moves of a held mouse to the deflection field that it leads to being with the
 * renderer, ms, in rising order. Each move waits until the page is at rest, so that none counts the drawing of another; nor
 * does it count how long a browser that paints in software keeps an event back.
 */
export async function answerTimes(page: Page, moves: readonly (readonly [number, number])[]): Promise<number[]> {
  const watch = await page.evaluateHandle(() => {
    const times: number[] = [];
    let moved: number | null = null;
    const canvas = document.querySelector('[data-testid="stage"] canvas');
    if (canvas === null) throw new Error('There is no canvas on the stage.');
    addEventListener('pointermove', () => (moved = performance.now()), { capture: true });
    new MutationObserver(() => {
      if (moved !== null) times.push(performance.now() - moved);
      moved = null;
    }).observe(canvas, { attributeFilter: ['data-fields'] });
    return times;
  });
  const told = () => watch.evaluate((times) => times.length);
  for (const [x, y] of moves) {
    const before = await told();
    await page.mouse.move(x, y);
    const end = performance.now() + 2000;
    while ((await told()) === before && performance.now() < end) await page.waitForTimeout(20);
    await page.waitForTimeout(150);
  }
  return (await watch.jsonValue()).toSorted((a, b) => a - b);
}

/** A frame of the page that took long, as the Long Animation Frames API tells of it. */
interface LongFrame extends PerformanceEntry {
  readonly scripts: readonly { readonly duration: number; readonly startTime: number }[];
}

/** Counts the tasks over 50 ms, the longest runs of the page's own code in slow frames, ms, and changes of the shown bow. */
export async function watchPage(page: Page) {
  const watch = await page.evaluateHandle(() => {
    const begin = performance.now();
    const longTasks: number[] = [];
    const scripts: number[] = [];
    let bows = 0;
    const tasks = new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) longTasks.push(duration);
    });
    tasks.observe({ type: 'longtask' });
    const frames = new PerformanceObserver((list) => {
      for (const frame of list.getEntries() as LongFrame[])
        for (const { startTime, duration } of frame.scripts) if (startTime > begin) scripts.push(duration);
    });
    frames.observe({ type: 'long-animation-frame' });
    const shown = new MutationObserver(() => bows++);
    const bow = document.querySelector('[data-testid="bow-value"]');
    if (bow !== null) shown.observe(bow, { characterData: true, childList: true, subtree: true });
    return () => {
      for (const observer of [tasks, frames, shown]) observer.disconnect();
      return { longTasks, scripts, bows };
    };
  });
  return { stop: () => watch.evaluate((read) => read()) };
}

/**
 * The bow that `flathead check - --json` gives for a model, in the digits that the page shows it with: the independent
 * route to the number.
 */
export async function bowOnCommandLine(model: HeadModel): Promise<string> {
  const { code, out } = await flathead(['check', '-', '--json'], JSON.stringify(model));
  if (code !== 0 && code !== 1) throw new Error(`flathead check ended with ${code}: ${out}`);
  const { verdict }: { verdict: Verdict } = JSON.parse(out);
  const um = verdict.criteria.find(({ criterion }) => criterion === 'bow')!.value * 1000;
  return um.toFixed(um >= 100 ? 0 : um >= 10 ? 1 : 2);
}
