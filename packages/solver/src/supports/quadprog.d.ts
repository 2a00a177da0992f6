declare module 'quadprog' {
  /** Minimises `z' D z / 2 - d' z` under `A' z >= b`, the first `equalities` of which hold exactly. Arrays count from 1. */
  export function solveQP(
    D: number[][],
    d: number[],
    A: number[][],
    b: number[],
    equalities: number,
  ): {
    readonly solution: number[];
    /** Numbers of the constraints that hold exactly; 0 fills the rest. */
    readonly iact: number[];
    /** Empty when solved. */
    readonly message: string;
  };
}
