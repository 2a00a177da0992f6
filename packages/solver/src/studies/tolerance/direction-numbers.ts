/**
 * Direction numbers of Sobol sequences after Joe and Kuo 2008, "Constructing Sobol sequences with better two-dimensional
 * projections", SIAM J. Sci. Comput. 30, as published with it (new-joe-kuo-6.21201): one row for each dimension from the
 * second on, `s a m_1 ... m_s` with the degree s of the primitive polynomial and its inner coefficients as the bits of a.
 */
const TABLE = `
1 0 1|2 1 1 3|3 1 1 3 1|3 2 1 1 1|4 1 1 1 3 3|4 4 1 3 5 13|5 2 1 1 5 5 17|5 4 1 1 5 5 5|5 7 1 1 7 11 19|5 11 1 1 5 1 1|
5 13 1 1 1 3 11|5 14 1 3 5 5 31|6 1 1 3 3 9 7 49|6 13 1 1 1 15 21 21|6 16 1 3 1 13 27 49|6 19 1 1 1 15 7 5|
6 22 1 3 1 15 13 25|6 25 1 1 5 5 19 61|7 1 1 3 7 11 23 15 103|7 4 1 3 7 13 13 15 69|7 7 1 1 3 13 7 35 63|
7 8 1 3 5 9 1 25 53|7 14 1 3 1 13 9 35 107|7 19 1 3 1 5 27 61 31|7 21 1 1 5 11 19 41 61|7 28 1 3 5 3 3 13 69|
7 31 1 1 7 13 1 19 1|7 32 1 3 7 5 13 19 59|7 37 1 1 3 9 25 29 41|7 41 1 3 5 13 23 1 55|7 42 1 3 7 3 13 59 17|
7 50 1 3 1 3 5 53 69|7 55 1 1 5 5 23 33 13|7 56 1 1 7 7 1 61 123|7 59 1 1 7 9 13 61 49|7 62 1 3 3 5 3 55 33|
8 14 1 3 1 15 31 13 49 245|8 21 1 3 5 15 31 59 63 97|8 22 1 3 1 11 11 11 77 249|8 38 1 3 1 11 27 43 71 9|
8 47 1 1 7 15 21 11 81 45|8 49 1 3 7 3 25 31 65 79|8 50 1 3 1 1 19 11 3 205|8 52 1 1 5 9 19 21 29 157|
8 56 1 3 7 11 1 33 89 185|8 67 1 3 3 3 15 9 79 71|8 70 1 3 7 11 15 39 119 27|8 84 1 1 3 1 11 31 97 225|
8 97 1 1 1 3 23 43 57 177|8 103 1 3 7 7 17 17 37 71|8 115 1 3 1 5 27 63 123 213|8 122 1 1 3 5 11 43 53 133`;

interface Row {
  readonly degree: number;
  /** Bits are the coefficients between the first and the last, which are 1. */
  readonly inner: number;
  readonly start: readonly number[];
}

/** Of dimensions 2 and on. */
export const directionRows: readonly Row[] = TABLE.trim()
  .split('|')
  .map((row) => {
    const [degree, inner, ...start] = row.trim().split(' ').map(Number);
    return { degree, inner, start };
  });

/** Dimensions there are numbers for. */
export const MOST_DIMENSIONS = directionRows.length + 1;
