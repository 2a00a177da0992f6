import { parseXml, type XmlDocument, XmlElement, XmlError, type XmlNode } from '@rgrove/parse-xml';
import { Fault } from '../fault/fault.ts';
import { LONGEST_TEXT } from '../plate/read-json.ts';
import { type Affine, after, type Curve, mapped, mapVertices, stretch } from './curve.ts';
import { drawingBudget, type Label, layerCounts, nameOf, type Strokes } from './drawing.ts';
import type { Dropped } from './reading.ts';
import { svgMap } from './svg-map.ts';
import { scaleOf } from './svg-scale.ts';
import { BadLength, ELEMENTS } from './svg-shapes.ts';

/** Elements that draw nothing where they stand. */
const SILENT = new Set(['title', 'desc', 'metadata', 'defs', 'clippath', 'mask', 'symbol', 'pattern', 'marker']);
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
  const guesses = [...scale.guesses];
  const clipped: number[] = [];
  walk(root.children, scale.map, '0');
  if (clipped.length > 0)
    guesses.push(
      `${clipped.length} elements are clipped or masked, such as on line ${clipped[0]}; they are read whole.`,
    );
  return { curves, labels, hidden: new Set(), layers: layers.list(), units: scale.unit, guesses, dropped };

  function walk(nodes: readonly XmlNode[], map: Affine, layer: string): void {
    for (const node of nodes) {
      if (!(node instanceof XmlElement)) continue;
      budget.visit();
      const name = nameOf(node.name).replace(/^.*:/, '').toLowerCase();
      if (SILENT.has(name) || (node.name.includes(':') && !node.name.startsWith('svg:'))) continue;
      if (name === 'style') {
        sheet(node);
        continue;
      }
      const unseen = unseenBy(node.attributes);
      if (unseen !== null) drop(node, layer, unseen);
      else if (name === 'g' || name === 'a' || name === 'switch') {
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

  /** Rules of a style sheet that would hide or move what they select. */
  function sheet(node: XmlElement): void {
    const rule = /(display\s*:\s*none|visibility\s*:\s*(?:hidden|collapse)|transform\s*:|\bd\s*:)/.exec(node.text);
    if (rule !== null)
      guesses.push(
        `The style sheet on line ${lineOf(node.start)} has "${rule[1]}", which is not heeded: what it hides or moves is read as it stands.`,
      );
  }

  function mapOf(node: XmlElement, map: Affine, layer: string): Affine | null {
    const { style = '', transform = '', 'clip-path': clip, mask } = node.attributes;
    if (clip !== undefined || mask !== undefined || /(clip-path|mask)\s*:/.test(style))
      clipped.push(lineOf(node.start));
    const isStyled = /(^|[;\s])(transform|translate|rotate|scale)\s*:/.test(style);
    const isTurned =
      transform !== '' && (node.attributes['transform-origin'] !== undefined || /transform-origin/.test(style));
    if (isStyled || isTurned) {
      drop(
        node,
        layer,
        `is moved by ${isStyled ? 'its style' : 'a transform with an origin'}; use a plain transform attribute`,
      );
      return null;
    }
    const own = svgMap(transform);
    if (own === null) drop(node, layer, `has the transform "${transform.slice(0, 40)}", which is none`);
    else if (own[0] * own[3] - own[1] * own[2] === 0) drop(node, layer, 'is transformed into nothing; remove it');
    else return after(map, own);
    return null;
  }

  function drop(node: XmlElement, layer: string, reason: string): void {
    dropped.push({ line: lineOf(node.start), reason: `<${nameOf(node.name)}> in "${layer}" ${reason}` });
  }

  function draw(name: string, node: XmlElement, map: Affine, layer: string): string | null {
    if (name === 'text') {
      const first = node.children.find((child) => child instanceof XmlElement);
      const [x, y] = ['x', 'y'].map(
        (key) => Number.parseFloat(node.attributes[key] ?? first?.attributes[key] ?? '0') || 0,
      );
      labels.push({ text: node.text.trim(), at: mapped(map, x, y), layer });
      budget.add(0, curves.length + labels.length);
      return null;
    }
    if (!Object.hasOwn(ELEMENTS, name)) return 'is of a kind that is not read; convert it into paths';
    const drawn = drawnBy(name, node, tolerance / stretch(map));
    if (typeof drawn === 'string') return drawn;
    for (const { vertices, closed } of drawn) {
      const corners = mapVertices(vertices, closed, map, tolerance);
      curves.push({ vertices: corners, closed, layer, line: lineOf(node.start) });
      budget.add(corners.length, curves.length + labels.length);
    }
    return null;
  }
}

function drawnBy(name: string, { attributes }: XmlElement, tolerance: number) {
  try {
    return ELEMENTS[name](attributes, tolerance);
  } catch (thrown) {
    if (thrown instanceof BadLength) return thrown.message;
    throw thrown;
  }
}

/** Why an element or a group is not to be seen; `null` where it is. */
function unseenBy({ style = '', display, visibility = '' }: XmlElement['attributes']): string | null {
  const isHidden = display === 'none' || /^(hidden|collapse)$/.test(visibility);
  return isHidden || /(display\s*:\s*none|visibility\s*:\s*(hidden|collapse))/.test(style)
    ? 'is not displayed; show or remove it'
    : null;
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

/** Line of an offset; asked in ascending order. */
function lineCounter(text: string): (offset: number) => number {
  let [line, from] = [1, 0];
  return (offset) => {
    if (offset < from) [line, from] = [1, 0];
    for (; from < offset; from++) if (text[from] === '\n') line++;
    return line;
  };
}
