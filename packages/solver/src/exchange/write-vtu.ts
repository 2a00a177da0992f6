import type { HeadModel } from '../model/head-model.ts';
import type { HeadResult } from '../results/head-result.ts';
import { base64 } from './base64.ts';
import { fieldsOf } from './case-fields.ts';
import { stampLine, stampOf } from './stamp.ts';
import { xmlText } from './xml-text.ts';

/** Type of a cell with three nodes. */
const TRIANGLE = 5;

type Numbers = Float64Array | Int32Array | Uint8Array;

/**
 * All cases of a solved head as an unstructured grid of the open visualisation toolkit (XML file format, version 1.0):
 * nodes at z = 0 in mm, a point array for each field and case such as `deflection: mounted`, and the section of each
 * triangle as a cell array.
 *
 * @param form of the arrays: numbers as text, or little-endian bytes in base 64 with their length in front
 */
export function headVtu(model: HeadModel, { mesh, cases }: HeadResult, form: 'ascii' | 'base64'): string {
  const n = mesh.x.length;
  const cells = mesh.triangles.length / 3;
  const points = new Float64Array(3 * n);
  for (let i = 0; i < n; i++) points.set([mesh.x[i], mesh.y[i], 0], 3 * i);
  const fields = cases.flatMap((solved) =>
    fieldsOf(solved).map(({ name, unit, values }) => array(`${name} (${unit}): ${solved.name}`, values)),
  );
  const { hash, version, model: name } = stampOf(model);
  return [
    '<?xml version="1.0"?>',
    `<!-- ${stampLine(model).replace(/-{2,}/g, '-')} -->`,
    '<VTKFile type="UnstructuredGrid" version="1.0" byte_order="LittleEndian" header_type="UInt32">',
    '<UnstructuredGrid>',
    '<FieldData>',
    word('model', name),
    word('model hash', hash),
    word('flathead version', version),
    '</FieldData>',
    `<Piece NumberOfPoints="${n}" NumberOfCells="${cells}">`,
    '<PointData>',
    ...fields,
    '</PointData>',
    '<CellData>',
    array('section', Int32Array.from(mesh.region)),
    '</CellData>',
    '<Points>',
    array('Points', points, 3),
    '</Points>',
    '<Cells>',
    array('connectivity', Int32Array.from(mesh.triangles)),
    array(
      'offsets',
      Int32Array.from({ length: cells }, (_, t) => 3 * t + 3),
    ),
    array('types', new Uint8Array(cells).fill(TRIANGLE)),
    '</Cells>',
    '</Piece>',
    '</UnstructuredGrid>',
    '</VTKFile>',
    '',
  ].join('\n');

  /** Its number of components is left out where it is one, as the format presumes. */
  function array(title: string, values: Numbers, components = 1): string {
    const type = values instanceof Float64Array ? 'Float64' : values instanceof Int32Array ? 'Int32' : 'UInt8';
    const format = form === 'ascii' ? 'ascii' : 'binary';
    const body = form === 'ascii' ? values.join(' ') : base64(withLength(values));
    const tuples = components === 1 ? '' : ` NumberOfComponents="${components}"`;
    return `<DataArray type="${type}" Name="${xmlText(title)}"${tuples} format="${format}">${body}</DataArray>`;
  }
}

/** A word as the codes of its letters in UTF-8: numbers, since not every reader knows arrays of strings. */
function word(title: string, text: string): string {
  const codes = new TextEncoder().encode(text);
  return `<DataArray type="UInt8" Name="${title}" NumberOfTuples="${codes.length}" format="ascii">${codes.join(' ')}</DataArray>`;
}

/** Bytes of the values, least significant first, behind their number as a 32-bit integer. */
function withLength(values: Numbers): Uint8Array {
  const bytes = new Uint8Array(4 + values.byteLength);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, values.byteLength, true);
  values.forEach((value, i) => {
    if (values instanceof Float64Array) view.setFloat64(4 + 8 * i, value, true);
    else if (values instanceof Int32Array) view.setInt32(4 + 4 * i, value, true);
    else view.setUint8(4 + i, value);
  });
  return bytes;
}
