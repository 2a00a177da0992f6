import { type Affine, after, type Curve, IDENTITY, mapped, mapVertices, stretch } from './curve.ts';
import { drawingBudget, type Label, layerCounts, nameOf, type Strokes } from './drawing.ts';
import { blocksOf, placements } from './dxf-blocks.ts';
import { type DxfEntity, heavyPolyline, isWide, withVertices } from './dxf-polyline.ts';
import { BadNumber, type DxfRecord, numberIn, readRecords, textOf } from './dxf-records.ts';
import { SHAPES, type Shaped } from './dxf-shapes.ts';
import { unitOfDrawing } from './dxf-unit.ts';
import { placeOf, wordsOf } from './dxf-words.ts';
import type { Dropped } from './reading.ts';

/** Kinds of entities that are no outlines, whatever is done to them. */
const NO_OUTLINES: ReadonlySet<string> = new Set([
  ...['ATTDEF', 'ATTRIB', 'DIMENSION', 'HATCH', 'IMAGE', 'LEADER', 'MLEADER', 'MULTILEADER', 'POINT', 'RAY'],
  ...['SOLID', 'TOLERANCE', 'TRACE', 'VIEWPORT', 'WIPEOUT', 'XLINE'],
]);
/** Blocks within blocks. */
const DEEPEST = 16;

/**
 * Curves of an ASCII DXF: lines, arcs, circles, ellipses, splines, polylines with bulges, and blocks in place.
 *
 * @param tolerance of corners on curves that are no arcs, mm
 * @throws Fault UNREADABLE, USAGE or TOO_LARGE
 */
export function dxfStrokes(text: string, units: string | undefined, tolerance: number): Strokes {
  const sections = readRecords(text);
  const { factor, unit, ...told } = unitOfDrawing(sections, units);
  const guesses: string[] = [...told.guesses];
  const dropped: Dropped[] = [];
  const blocks = blocksOf(sections.blocks, dropped);
  const layers = layerCounts();
  const budget = drawingBudget();
  const curves: Curve[] = [];
  const labels: Label[] = [];
  let wide = 0;
  draw(withVertices(sections.entities), [factor, 0, 0, factor, 0, 0], null, []);
  if (wide > 0) guesses.push(`${wide} polylines have a width; they are read along their middle.`);
  const hidden = hiddenLayers(sections.tables);
  return { curves, labels, hidden, layers: layers.list(), units: unit, guesses, dropped };

  function draw(entities: readonly DxfEntity[], map: Affine, within: string | null, path: readonly string[]): void {
    for (const { record, vertices } of entities) {
      budget.visit();
      const own = nameOf(textOf(record, 8) ?? '0');
      const layer = own === '0' && within !== null ? within : own;
      layers.add(layer, nameOf(record.type.toLowerCase()));
      try {
        const reason = drawOne(record, vertices, map, layer, path);
        if (reason !== null) drop(record, layer, reason);
      } catch (thrown) {
        if (!(thrown instanceof BadNumber)) throw thrown;
        drop(record, layer, thrown.message);
      }
    }
  }

  function drop({ type, line }: DxfRecord, layer: string, reason: string): void {
    dropped.push({ line, reason: `${nameOf(type)} on layer "${layer}" ${reason}` });
  }

  function drawOne(
    record: DxfRecord,
    vertices: readonly DxfRecord[],
    map: Affine,
    layer: string,
    path: readonly string[],
  ): string | null {
    if (numberIn(record, 67, 0) === 1) return 'is in paper space; draw it in model space';
    if (numberIn(record, 60, 0) === 1) return 'is invisible; show or remove it';
    const placed = facing(record, map);
    if (placed === null) return 'is not drawn in the x-y plane; flatten the drawing';
    if (record.type === 'INSERT') return insert(record, placed, layer, path);
    if (record.type === 'TEXT' || record.type === 'MTEXT') {
      labels.push({ text: wordsOf(record), at: mapped(placed, ...placeOf(record)), layer });
      budget.add(0, curves.length + labels.length);
      return null;
    }
    const shape = record.type === 'POLYLINE' ? heavyPolyline(record, vertices) : shapeOf(record, map);
    if (typeof shape === 'string') return shape;
    if (isWide(record)) wide++;
    const corners = mapVertices(shape.vertices, shape.closed, placed, tolerance);
    curves.push({ vertices: corners, closed: shape.closed, layer, line: record.line });
    budget.add(corners.length, curves.length + labels.length);
    return null;
  }

  function shapeOf(record: DxfRecord, map: Affine): Shaped {
    if (NO_OUTLINES.has(record.type)) return 'is no outline; draw it with lines and arcs if it is to count';
    if (!Object.hasOwn(SHAPES, record.type)) return 'is of a kind that is not read; explode it into lines and arcs';
    return SHAPES[record.type](record, tolerance / stretch(map));
  }

  function insert(record: DxfRecord, map: Affine, layer: string, path: readonly string[]): string | null {
    const name = nameOf(textOf(record, 2) ?? '');
    const block = blocks.get(name.toUpperCase());
    if (block === undefined) return `places the block "${name}", which the drawing does not hold; explode it`;
    if (path.includes(name.toUpperCase())) return `places the block "${name}" within itself; explode it`;
    if (path.length >= DEEPEST) return `lies deeper than ${DEEPEST} blocks within each other; explode it`;
    const places = placements(record, block);
    if (typeof places === 'string') return places;
    const entities = withVertices(block.entities);
    for (const place of places) {
      budget.visit();
      draw(entities, after(map, place), layer, [...path, name.toUpperCase()]);
    }
    return null;
  }
}

/** Layers that are frozen, or switched off by a colour below 0. */
function hiddenLayers(tables: readonly DxfRecord[]): ReadonlySet<string> {
  return new Set(
    tables
      .filter((record) => record.type === 'LAYER')
      .filter((record) => (Number(textOf(record, 70) ?? 0) & 1) === 1 || Number(textOf(record, 62) ?? 0) < 0)
      .map((record) => textOf(record, 2) ?? ''),
  );
}

/** Entities seen from below are drawn with x reversed; those in other planes are not of the plan. */
function facing(record: DxfRecord, map: Affine): Affine | null {
  const [nx, ny, nz] = [numberIn(record, 210, 0), numberIn(record, 220, 0), numberIn(record, 230, 1)];
  if (Math.abs(nx) > 1e-6 || Math.abs(ny) > 1e-6) return null;
  const reversing = nz < 0 && record.type !== 'LINE' && record.type !== 'ELLIPSE' && record.type !== 'SPLINE';
  return reversing ? after(map, [-1, 0, 0, 1, 0, 0]) : after(map, IDENTITY);
}
