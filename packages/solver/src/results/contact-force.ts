/** Force that one end of the probes of a site keeps. */
export interface ContactForce {
  /** Least and mean over the probe field, N; 0 where contact is lost. The mean is exact where it is not. */
  readonly minimum: number;
  readonly mean: number;
  /** Largest less least over the field, N. */
  readonly spread: number;
  /** Least compression left, mm: least force over rate. */
  readonly compression: number;
}
