/** One way to break the solver, and the checks of the verification book that must notice. */
export interface Perturbation {
  readonly name: string;
  /** Under packages/solver/src. */
  readonly file: string;
  readonly from: string;
  readonly to: string;
  readonly noticed: readonly { readonly topic: string; readonly model: string; readonly quantity: string }[];
}
export const perturbations: readonly Perturbation[];
