/** Smallest angle of any triangle, degrees. */
export function smallestAngle(x: Float64Array, y: Float64Array, triangles: ArrayLike<number>, count: number): number {
  let least = Infinity; // sin^2
  for (let i = 0; i < 3 * count; i += 3) {
    const [a, b, c] = [triangles[i], triangles[i + 1], triangles[i + 2]];
    const ab2 = (x[b] - x[a]) ** 2 + (y[b] - y[a]) ** 2;
    const bc2 = (x[c] - x[b]) ** 2 + (y[c] - y[b]) ** 2;
    const ca2 = (x[a] - x[c]) ** 2 + (y[a] - y[c]) ** 2;
    const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
    // The smallest angle faces the shortest edge: sin = 2 A / (product of the two longer ones).
    least = Math.min(least, (twice * twice * Math.min(ab2, bc2, ca2)) / (ab2 * bc2 * ca2));
  }
  return (Math.asin(Math.sqrt(Math.min(1, least))) * 180) / Math.PI;
}
