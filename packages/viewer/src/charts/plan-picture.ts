/** Pixels as a picture that stands in the page by itself, also in a saved or printed one. @param rgba `[4 * columns * rows]` */
export function pictureUrl(rgba: Uint8ClampedArray<ArrayBuffer>, columns: number, rows: number): string {
  const canvas = document.createElement('canvas');
  canvas.width = columns;
  canvas.height = rows;
  canvas.getContext('2d')?.putImageData(new ImageData(rgba, columns, rows), 0, 0);
  return canvas.toDataURL();
}
