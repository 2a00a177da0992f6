import { Matrix, SingularValueDecomposition } from 'ml-matrix';

/** Terms about the middle, and about each kind of corner. */
const [SMOOTH, CORNER] = [14, 6];
/** Points along a side. */
const POINTS = 120;

/** Deflection and its Laplacian at a point. */
type Term = (x: number, y: number) => readonly [w: number, laplacian: number];

/**
 * Middle of a simply supported rhombus under unit pressure, over `q s^4 / D` with s its side (Morley 1963).
 *
 * Biharmonic functions with both symmetries are fitted to `w = 0`, `lap w = 0` along a side by least squares: `r^4 / 64`
 * for the load, `r^2k cos 2k theta` and `r^(2k+2) cos 2k theta` about the middle, and about the corners
 * `r^l cos l theta`, `r^(l+2) cos l theta`, l = (2k + 1) pi / angle, theta from the bisector: those are zero on both
 * sides of their corner and bring the unbounded moments.
 *
 * @param angle acute angle, degrees
 */
export function rhombusDeflection(angle: number): number {
  const acute = (angle * Math.PI) / 180;
  const [along, across] = [Math.cos(acute / 2), Math.sin(acute / 2)];
  const terms: Term[] = [];
  for (let k = 0; k < SMOOTH; k++) terms.push(polar(2 * k, 0), polar(2 * k, 2));
  for (let k = 0; k < CORNER; k++)
    for (const extra of [0, 2]) {
      const atAcute = polar(((2 * k + 1) * Math.PI) / acute, extra);
      const atObtuse = polar(((2 * k + 1) * Math.PI) / (Math.PI - acute), extra);
      terms.push((x, y) => sum(atAcute(along - x, y), atAcute(along + x, y)));
      terms.push((x, y) => sum(atObtuse(across - y, x), atObtuse(across + y, x)));
    }
  const rows: number[][] = [];
  const rhs: number[] = [];
  for (let i = 0; i < POINTS; i++) {
    const s = 0.5 - 0.5 * Math.cos((Math.PI * (i + 0.5)) / POINTS);
    const [x, y] = [along * (1 - s), across * s];
    const values = terms.map((term) => term(x, y));
    const r2 = x * x + y * y;
    rows.push(
      values.map(([w]) => w),
      values.map(([, laplacian]) => laplacian),
    );
    rhs.push(-(r2 ** 2) / 64, -r2 / 4);
  }
  const scale = terms.map((_, j) => Math.hypot(...rows.map((row) => row[j])));
  const A = new Matrix(rows.map((row) => row.map((value, j) => value / scale[j])));
  const c = new SingularValueDecomposition(A).solve(Matrix.columnVector(rhs)).to1DArray();
  return terms.reduce((w, term, j) => w + (c[j] / scale[j]) * term(0, 0)[0], 0);
}

/** `r^(l + extra) cos l theta` with extra = 0 or 2. */
function polar(l: number, extra: number): Term {
  return (x, y) => {
    const r = Math.hypot(x, y);
    const cosine = Math.cos(l * Math.atan2(y, x));
    return [r ** (l + extra) * cosine, extra === 0 ? 0 : ((l + extra) ** 2 - l * l) * r ** l * cosine];
  };
}

function sum([w, lap]: ReturnType<Term>, [w2, lap2]: ReturnType<Term>): ReturnType<Term> {
  return [w + w2, lap + lap2];
}
