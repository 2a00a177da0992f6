import type { HeadModel, HeadResult } from '@flathead/solver';
import {
  fastenerCsv,
  fieldCsv,
  headDxf,
  headGlb,
  headStl,
  headSvg,
  headVtu,
  headXlsx,
  probeCsv,
  verdictRecord,
} from '@flathead/solver/exchange';

type Content = string | Uint8Array;

/** A file that the head, or its answer in the case shown, can be written to. */
export interface ExportForm {
  readonly id: string;
  readonly label: string;
  readonly note: string;
  /** What its name ends with, after that of the head. */
  readonly ending: string;
  readonly type: string;
  /** Left out where the model alone is written. */
  readonly ofAnswer?: (
    model: HeadModel,
    result: HeadResult,
    caseName: string | undefined,
  ) => Content | Promise<Content>;
  readonly ofModel?: (model: HeadModel) => Content;
}

export const EXPORTS: readonly { readonly title: string; readonly forms: readonly ExportForm[] }[] = [
  {
    title: 'For the board',
    forms: [
      {
        id: 'fasteners',
        label: 'Fasteners',
        note: 'CSV: name, x, y, screw, holes, height',
        ending: '.fasteners.csv',
        type: 'text/csv',
        ofModel: fastenerCsv,
      },
      {
        id: 'outline',
        label: 'Outline and holes',
        note: 'DXF in mm, on layers',
        ending: '.dxf',
        type: 'image/vnd.dxf',
        ofModel: headDxf,
      },
      {
        id: 'probes',
        label: 'Probes',
        note: 'CSV: site, number, x, y, preload',
        ending: '.probes.csv',
        type: 'text/csv',
        ofModel: probeCsv,
      },
    ],
  },
  {
    title: 'Results',
    forms: [
      {
        id: 'verdict',
        label: 'Verdict',
        note: 'JSON, with a schema',
        ending: '.verdict.json',
        type: 'application/json',
        ofAnswer: (model, result) => `${JSON.stringify(verdictRecord(model, result), null, 2)}\n`,
      },
      {
        id: 'tables',
        label: 'Tables',
        note: 'XLSX: verdict, sites, fasteners, stress',
        ending: '.xlsx',
        type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
        ofAnswer: headXlsx,
      },
      {
        id: 'fields',
        label: 'Fields on a grid',
        note: 'CSV: deflection, deviation, tension',
        ending: '.fields.csv',
        type: 'text/csv',
        ofAnswer: (model, result, name) => fieldCsv(model, result, { case: name }),
      },
      {
        id: 'mesh',
        label: 'Fields on the mesh',
        note: 'VTU, all cases',
        ending: '.vtu',
        type: 'application/xml',
        ofAnswer: (model, result) => headVtu(model, result, 'base64'),
      },
    ],
  },
  {
    title: 'Pictures and shapes',
    forms: [
      {
        id: 'picture',
        label: 'Picture, lines',
        note: 'SVG to scale',
        ending: '.svg',
        type: 'image/svg+xml',
        ofAnswer: (model, result, name) => headSvg(model, result, { case: name }),
      },
      {
        id: 'pixels',
        label: 'Picture, pixels',
        note: 'PNG, 2000 pixels wide',
        ending: '.png',
        type: 'image/png',
        ofAnswer: (model, result, name) => pixels(headSvg(model, result, { case: name })),
      },
      {
        id: 'glb',
        label: 'Bent surface, coloured',
        note: 'binary glTF',
        ending: '.glb',
        type: 'model/gltf-binary',
        ofAnswer: (model, result, name) => headGlb(model, result, { case: name }),
      },
      {
        id: 'stl',
        label: 'Bent surface',
        note: 'binary STL, mm',
        ending: '.stl',
        type: 'model/stl',
        ofAnswer: (model, result, name) => headStl(model, result, { case: name }),
      },
    ],
  },
];

const WIDE = 2000;

/** Draws an SVG on white in pixels. */
async function pixels(svg: string): Promise<Uint8Array> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = WIDE;
    canvas.height = Math.round((WIDE * image.naturalHeight) / image.naturalWidth);
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('this browser gives no canvas');
    context.fillStyle = 'white';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (blob === null) throw new Error('the picture could not be made');
    return new Uint8Array(await blob.arrayBuffer());
  } finally {
    URL.revokeObjectURL(url);
  }
}
