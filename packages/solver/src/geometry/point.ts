/** A point or vector in the plane of the plate, mm: x along the longer site row, y across. */
export type Point = readonly [x: number, y: number];

/** Closed ring of points without repetition of the first; counter-clockwise encloses, clockwise is a hole. */
export type Ring = readonly Point[];

/** Union of rings by the non-zero rule: outer rings counter-clockwise, holes clockwise. */
export type Region = readonly Ring[];
