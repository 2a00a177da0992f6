/* What `@flathead/solver/exchange` offers: readers and writers of other programs' files. Loaded on its own. */

export type { SurfaceOptions } from './bent-surface.ts';
export { type FastenerList, readFastenerList, takeFasteners } from './fastener-list.ts';
export { type FieldCsvOptions, fieldCsv, readPoints } from './field-csv.ts';
export type { FileContent } from './file-text.ts';
export { headFlaw } from './head-flaw.ts';
export { type HeightMap, readHeightMap, takeHeights } from './heights.ts';
export { type ListedColumn, listedColumns } from './listed-columns.ts';
export { type Drawing, type DrawingOptions, readDrawing } from './outline.ts';
export type { ListOptions } from './points-list.ts';
export { type ProbeList, type ProbeListOptions, readProbeList } from './probe-list.ts';
export {
  FILE_KINDS,
  type FileKind,
  fileKind,
  fileRoles,
  type ReadFile,
  type ReadFileOptions,
  readFile,
} from './read-file.ts';
export type { Dropped, Extents, Preview, Reading, Taken } from './reading.ts';
export { OUTLINE_ROLES, type OutlineRole, takeOutline } from './take-outline.ts';
export { takeProbes } from './take-probes.ts';
export { type VerdictRecord, verdictRecord, verdictSchema } from './verdict-record.ts';
export { type SheetName, sheetNames } from './workbook.ts';
export { headDxf } from './write-dxf.ts';
export { fastenerCsv, probeCsv } from './write-lists.ts';
export { headSvg, type PictureOptions } from './write-picture.ts';
export { headGlb, headStl } from './write-surface.ts';
export { headXlsx } from './write-tables.ts';
export { headVtu } from './write-vtu.ts';
