import { parseXml, type XmlDocument, XmlElement, XmlError, type XmlNode } from '@rgrove/parse-xml';
import { Fault } from '../fault/fault.ts';
import { LONGEST_TEXT } from '../plate/read-json.ts';
import { type Affine, after, type Curve, mapped, mapVertices, stretch } from './curve.ts';
import { drawingBudget, type Label, layerCounts, nameOf, type Strokes } from './drawing.ts';
import type { Dropped } from './reading.ts';
import { svgMap } from './svg-map.ts';
import { ELEMENTS } from './svg-shapes.ts';
import { askedUnit, factorOf } from './units.ts';

/** Elements that draw nothing where they stand. */
const SILENT = new Set([
  'title',
  'desc',
  'metadata',
  'style',
  'defs',
  'clippath',
  'mask',
  'symbol',
  'pattern',
  'marker',
]);
/** mm in a CSS pixel, 96 of which are an inch by definition (CSS Values and Units 3). */
const PIXEL = 25.4 / 96;
const PER_UNIT: Readonly<Record<string, number>> = {
  ...{ px: PIXEL, '': PIXEL, pt: 25.4 / 72, pc: 25.4 / 6, in: 25.4, cm: 10, mm: 1, q: 0.25 },
};

/**
 * Curves of an SVG: paths and basic shapes with all transforms, y turned up. Layers are groups, by their label or id.
 *
 * @param tolerance of corners on curves that are no arcs, mm
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE
 */
export function svgStrokes(text: string, units: string | undefined, tolerance: number): Strokes {
  const root = rootOf(text);
  const scale = scaleOf(root, units);
  const layers = layerCounts();
  const budget = drawingBudget();
  const curves: Curve[] = [];
  const labels: Label[] = [];
  const dropped: Dropped[] = [];
  const lineOf = lineCounter(text);
  walk(root.children, scale.map, '0');
  return { curves, labels, layers: layers.list(), units: scale.unit, guesses: scale.guesses, dropped };

  function walk(nodes: readonly XmlNode[], map: Affine, layer: string): void {
    for (const node of nodes) {
      if (!(node instanceof XmlElement)) continue;
      budget.visit();
      const name = nameOf(node.name).replace(/^.*:/, '').toLowerCase();
      if (SILENT.has(name) || (node.name.includes(':') && !node.name.startsWith('svg:'))) continue;
      if (name === 'g' || name === 'a' || name === 'switch') {
        const own = mapOf(node, map, layer);
        if (own !== null) walk(node.children, own, layerOf(node) ?? layer);
      } else {
        layers.add(layer, name);
        const own = mapOf(node, map, layer);
        const reason = own === null ? null : draw(name, node, own, layer);
        if (reason !== null) drop(node, layer, reason);
      }
    }
  }

  function mapOf(node: XmlElement, map: Affine, layer: string): Affine | null {
    const own = svgMap(node.attributes.transform ?? '');
    if (own === null)
      drop(node, layer, `has the transform "${node.attributes.transform?.slice(0, 40)}", which is none`);
    else if (own[0] * own[3] - own[1] * own[2] === 0) drop(node, layer, 'is transformed into nothing; remove it');
    else return after(map, own);
    return null;
  }

  function drop(node: XmlElement, layer: string, reason: string): void {
    dropped.push({ line: lineOf(node.start), reason: `<${nameOf(node.name)}> in "${layer}" ${reason}` });
  }

  function draw(name: string, node: XmlElement, map: Affine, layer: string): string | null {
    if (/display\s*:\s*none/.test(node.attributes.style ?? '') || node.attributes.display === 'none')
      return 'is not displayed; show or remove it';
    if (name === 'text') {
      const [x, y] = ['x', 'y'].map((key) => Number.parseFloat(node.attributes[key] ?? '0') || 0);
      labels.push({ text: node.text.trim(), at: mapped(map, x, y), layer });
      budget.add(0, curves.length + labels.length);
      return null;
    }
    if (!Object.hasOwn(ELEMENTS, name)) return 'is of a kind that is not read; convert it into paths';
    const drawn = ELEMENTS[name](node.attributes, tolerance / stretch(map));
    if (typeof drawn === 'string') return drawn;
    for (const { vertices, closed } of drawn) {
      const corners = mapVertices(vertices, closed, map, tolerance);
      curves.push({ vertices: corners, closed, layer, line: lineOf(node.start) });
      budget.add(corners.length, curves.length + labels.length);
    }
    return null;
  }
}

function rootOf(text: string): XmlElement {
  if (text.length > LONGEST_TEXT)
    throw new Fault(
      'TOO_LARGE',
      `The drawing is longer than ${LONGEST_TEXT / 1e6} million characters. Leave out groups.`,
    );
  let document: XmlDocument;
  try {
    document = parseXml(text.replace(/^\uFEFF/, ''), { includeOffsets: true });
  } catch (thrown) {
    if (thrown instanceof XmlError)
      throw new Fault(
        'UNREADABLE',
        `The drawing is no sound XML: ${thrown.message.split('\n')[0]}. Export it again.`,
        '',
        { line: thrown.line, column: thrown.column },
      );
    if (thrown instanceof RangeError)
      throw new Fault('TOO_LARGE', 'The drawing has groups nested too deep to read. Ungroup it.');
    throw thrown;
  }
  const { root } = document;
  if (root !== null && /^(svg:)?svg$/i.test(root.name)) return root;
  throw new Fault('UNREADABLE', `The drawing is no SVG: its root is <${root?.name ?? ''}>. Export it as SVG.`, '', {
    line: 1,
  });
}

/** Label of a group, or its id. */
function layerOf({ attributes }: XmlElement): string | null {
  const label = Object.keys(attributes).find((key) => key.endsWith(':label'));
  const name = (label === undefined ? undefined : attributes[label]) ?? attributes.id;
  return name === undefined ? null : nameOf(name);
}

function scaleOf(root: XmlElement, asked: string | undefined) {
  const given = askedUnit(asked, 'length');
  const { width = '', height = '', viewBox = '' } = root.attributes;
  const [w, h] = [lengthOf(width), lengthOf(height)];
  const box = viewBox
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const boxed = box.length === 4 && box.every(Number.isFinite) && box[2] > 0 && box[3] > 0 ? box : null;
  const flipped = (mm: number, x = 0, y = 0): Affine => [mm, 0, 0, -mm, -mm * x, mm * (y + (boxed?.[3] ?? 0))];
  if (given !== null)
    return {
      map: flipped(factorOf(given, 'length'), boxed?.[0], boxed?.[1]),
      unit: { length: given, basis: 'given' as const },
      guesses: [],
    };
  if (boxed !== null && w !== null && h !== null) {
    const [sx, sy] = [w.mm / boxed[2], h.mm / boxed[3]];
    const mm = Math.min(sx, sy);
    const uneven = Math.abs(sx / sy - 1) > 1e-3;
    const physical = w.unit !== '' && w.unit !== 'px';
    return {
      map: flipped(mm, boxed[0], boxed[1]),
      unit: { length: w.unit === '' ? 'px' : w.unit, basis: physical ? ('file' as const) : ('guessed' as const) },
      guesses: [
        ...(uneven ? ['Width, height and viewBox do not fit each other; the smaller scale is used.'] : []),
        ...(physical ? [] : [PIXELS]),
      ],
    };
  }
  return {
    map: flipped(PIXEL, boxed?.[0], boxed?.[1]),
    unit: { length: 'px', basis: 'guessed' as const },
    guesses: [PIXELS],
  };
}

const PIXELS =
  'One unit is taken as a CSS pixel, 1/96 inch: the drawing gives no physical size. Give the unit if that is wrong.';

function lengthOf(text: string): { readonly mm: number; readonly unit: string } | null {
  const match = /^\s*\+?((?:\d+(?:\.\d+)?|\.\d+)(?:e[+-]?\d+)?)\s*(px|pt|pc|in|cm|mm|q)?\s*$/i.exec(text);
  if (match === null || !(Number(match[1]) > 0)) return null;
  const unit = (match[2] ?? '').toLowerCase();
  return { mm: Number(match[1]) * PER_UNIT[unit], unit };
}

/** Line of an offset; asked in ascending order. */
function lineCounter(text: string): (offset: number) => number {
  let [line, from] = [1, 0];
  return (offset) => {
    if (offset < from) [line, from] = [1, 0];
    for (; from < offset; from++) if (text[from] === '\n') line++;
    return line;
  };
}
