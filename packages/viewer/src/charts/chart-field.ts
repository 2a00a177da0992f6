import type { ScaleLinear } from 'd3-scale';

/** The field of a chart within its picture, px. */
export interface ChartField {
  readonly width: number;
  readonly height: number;
  /** Edges of the field. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly floor: number;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
}
